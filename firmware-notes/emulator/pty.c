#include "pty.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <termios.h>
#include <unistd.h>

static bool make_raw(int terminal)
{
    struct termios settings;
    if (tcgetattr(terminal, &settings) != 0)
        return false;
    cfmakeraw(&settings);
    return tcsetattr(terminal, TCSANOW, &settings) == 0;
}

/* Opening and closing the slave once makes the master report a hang-up until somebody opens it (Linux, pty(7)). */
static bool prepare_slave(const char *slave)
{
    int terminal = open(slave, O_RDWR | O_NOCTTY | O_CLOEXEC);
    if (terminal < 0)
        return false;
    bool raw = make_raw(terminal);
    close(terminal);
    return raw;
}

/* Anything but a link is somebody's file, and stays. */
static bool is_free_or_link(const char *path)
{
    struct stat there;
    if (lstat(path, &there) != 0)
        return errno == ENOENT;
    errno = EEXIST;
    return S_ISLNK(there.st_mode);
}

/* A link can only be replaced in one step by renaming another onto it. */
static bool make_link(const char *slave, const char *link)
{
    char fresh[PATH_MAX];
    if (!is_free_or_link(link))
        return false;
    int length = snprintf(fresh, sizeof fresh, "%s.%ld", link, (long)getpid());
    if (length < 0 || (size_t)length >= sizeof fresh) {
        errno = ENAMETOOLONG;
        return false;
    }
    unlink(fresh);
    if (symlink(slave, fresh) != 0)
        return false;
    if (rename(fresh, link) == 0)
        return true;
    int reason = errno;
    unlink(fresh);
    errno = reason;
    return false;
}

bool pty_prepare(const struct pty *pty)
{
    char slave[64];
    return grantpt(pty->master) == 0 && unlockpt(pty->master) == 0 && ptsname_r(pty->master, slave, sizeof slave) == 0
        && prepare_slave(slave) && make_link(slave, pty->link);
}

bool pty_plug(struct pty *pty, const char *link)
{
    pty->link = link;
    pty->master = posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
    if (pty->master < 0)
        return false;
    if (pty_prepare(pty))
        return true;
    int reason = errno;
    close(pty->master);
    pty->master = -1;
    errno = reason;
    return false;
}

/* Another board may have taken over the link: only remove a link to our own slave. */
static bool owns_link(const struct pty *pty)
{
    char slave[64];
    char target[64];
    if (ptsname_r(pty->master, slave, sizeof slave) != 0)
        return false;
    ssize_t length = readlink(pty->link, target, sizeof target - 1);
    if (length < 0)
        return false;
    target[length] = 0;
    return strcmp(slave, target) == 0;
}

void pty_unplug(struct pty *pty)
{
    if (pty->master < 0)
        return;
    if (owns_link(pty))
        unlink(pty->link);
    close(pty->master);
    pty->master = -1;
}

bool pty_is_open(const struct pty *pty)
{
    struct pollfd wanted = {.fd = pty->master, .events = POLLIN};
    return pty->master >= 0 && poll(&wanted, 1, 0) >= 0 && !(wanted.revents & POLLHUP);
}

void pty_forget(struct pty *pty)
{
    char slave[64];
    if (pty->master < 0 || ptsname_r(pty->master, slave, sizeof slave) != 0)
        return;
    int terminal = open(slave, O_RDWR | O_NOCTTY | O_CLOEXEC);
    if (terminal < 0)
        return;
    tcflush(terminal, TCIFLUSH);
    close(terminal);
}

size_t pty_read(struct pty *pty, uint8_t *bytes, size_t room)
{
    if (pty->master < 0 || room == 0)
        return 0;
    ssize_t count = read(pty->master, bytes, room);
    return count > 0 ? (size_t)count : 0;
}

size_t pty_write(struct pty *pty, const uint8_t *bytes, size_t count)
{
    if (!pty_is_open(pty))
        return 0;
    ssize_t written = write(pty->master, bytes, count);
    return written > 0 ? (size_t)written : 0;
}
