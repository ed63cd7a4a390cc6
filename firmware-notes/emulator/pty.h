#ifndef LAMPWRIGHT_PTY_H
#define LAMPWRIGHT_PTY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/*
 * A pseudo-terminal whose slave the host opens like a serial port, through a symbolic link. Raw: bytes pass unchanged and nothing is
 * echoed.
 */

struct pty {
    const char *link;                   /* path of the link; must outlive the pty */
    int master;                         /* -1 while unplugged */
};

/* Creates the pty and the link to its slave, replacing any link there. False, with errno, if it cannot. */
bool pty_plug(struct pty *pty, const char *link);

/* Prepares an already open master for use, with the link to its slave. False, with errno, if it cannot. */
bool pty_prepare(const struct pty *pty);

/* Removes the link and closes the pty: the host sees its device vanish. Does nothing if unplugged. */
void pty_unplug(struct pty *pty);

/* Whether somebody has the slave open. */
bool pty_is_open(const struct pty *pty);

/* Discards what was sent and not read, like a serial device when the host closes it. */
void pty_forget(struct pty *pty);

/* Reads what the host sent, without waiting. 0 if there is nothing. */
size_t pty_read(struct pty *pty, uint8_t *bytes, size_t room);

/* Sends to the host, without waiting. Returns how many bytes were accepted; none if nobody has the slave open. */
size_t pty_write(struct pty *pty, const uint8_t *bytes, size_t count);

#endif
