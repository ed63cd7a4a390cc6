#ifndef LAMPWRIGHT_COMMAND_H
#define LAMPWRIGHT_COMMAND_H

#include <stdbool.h>
#include <stdint.h>

#include "fuse.h"
#include "trouble.h"

/* A parsed line of the board's standard input. Times in ms are 0 to 3600000. */

enum command_kind {
    COMMAND_DEAF,
    COMMAND_TROUBLE,
    COMMAND_STALL,
    COMMAND_FUSE,
    COMMAND_RESET,
    COMMAND_BROWN_OUT,
    COMMAND_HANG,
    COMMAND_UNPLUG,
    COMMAND_PLUG,
    COMMAND_STATS,
    COMMAND_QUIT,
};

struct command {
    enum command_kind kind;
    uint64_t ms;                        /* of DEAF and STALL */
    enum trouble_kind trouble;          /* of TROUBLE, and so are the rest */
    bool up;                            /* board to host */
    uint64_t count;
    uint64_t every;                     /* 1 or more */
    struct fuse_rating fuse;            /* of FUSE; without a current the fuse is removed */
};

/* Parses a line without its end. False if it is not a command; *complaint then says what would be right. */
bool command_read(const char *line, struct command *command, const char **complaint);

#endif
