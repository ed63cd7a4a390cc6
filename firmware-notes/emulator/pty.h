#ifndef LAMPWRIGHT_PTY_H
#define LAMPWRIGHT_PTY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/*
 * A pseudo-terminal whose slave the host opens like a serial port, by way of a symbolic link. Raw: bytes pass unchanged
 * and nothing is echoed.
 */

struct pty {
    const char *link;                   /* path of the link; must outlive the pty */
    int master;                         /* -1 while unplugged */
};

/* Makes the pty and the link to its slave, in place of whatever link stood there. False, with errno, if it cannot. */
bool pty_plug(struct pty *pty, const char *link);

/* Makes a master that is open already ready to be used, with the link to its slave. False, with errno, if it cannot. */
bool pty_prepare(const struct pty *pty);

/* Removes the link and closes the pty: the host sees its device vanish. Nothing to do when unplugged. */
void pty_unplug(struct pty *pty);

/* Somebody has the slave open. */
bool pty_is_open(const struct pty *pty);

/* Forgets what was sent and not read, as a serial device does when the host closes it. */
void pty_forget(struct pty *pty);

/* Reads what the host sent, without waiting. 0 if there is nothing. */
size_t pty_read(struct pty *pty, uint8_t *bytes, size_t room);

/* Sends to the host, without waiting. Tells how many bytes found room; none when nobody has the slave open. */
size_t pty_write(struct pty *pty, const uint8_t *bytes, size_t count);

#endif
