/*
 * What Node.js cannot do to a pseudo-terminal, for terminal.js. Standard input is the terminal's master.
 *
 *   terminal plug LINK    makes the slave raw and LINK a link to it, and prints the slave's path
 *   terminal forget       drops what nobody has read
 */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "../pty.h"

enum { STATUS_GOOD, STATUS_FAILED, STATUS_WRONG };

static int plug(const char *link)
{
    struct pty pty = {.master = STDIN_FILENO, .link = link};
    char slave[64];
    if (!pty_prepare(&pty) || ptsname_r(STDIN_FILENO, slave, sizeof slave) != 0) {
        fprintf(stderr, "%s\n", strerror(errno));
        return STATUS_FAILED;
    }
    puts(slave);
    return STATUS_GOOD;
}

/* Node.js makes inherited descriptors blocking; the master must not be, and the setting is shared. */
static void do_not_wait(void)
{
    fcntl(STDIN_FILENO, F_SETFL, fcntl(STDIN_FILENO, F_GETFL) | O_NONBLOCK);
}

int main(int argc, char **argv)
{
    do_not_wait();
    if (argc == 3 && strcmp(argv[1], "plug") == 0)
        return plug(argv[2]);
    if (argc != 2 || strcmp(argv[1], "forget") != 0)
        return STATUS_WRONG;
    struct pty pty = {.master = STDIN_FILENO};
    pty_forget(&pty);
    return STATUS_GOOD;
}
