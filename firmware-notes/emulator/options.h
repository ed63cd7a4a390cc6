#ifndef LAMPWRIGHT_OPTIONS_H
#define LAMPWRIGHT_OPTIONS_H

#include <stdbool.h>

#include "board.h"
#include "image.h"

struct options {
    const char *elf;
    const char *link;
    struct board_options board;
    unsigned channels;                  /* 3 or 4 */
    struct image_eeprom eeprom;
    bool free;
    bool strict;
    bool quiet;
    bool reset_on_open;
};

enum options_outcome { OPTIONS_GOOD, OPTIONS_HELP, OPTIONS_WRONG };

/* Parses the command line. With OPTIONS_WRONG it has written one line to standard error, with OPTIONS_HELP nothing. */
enum options_outcome options_read(struct options *options, int argc, char **argv);

extern const char options_help[];

#endif
