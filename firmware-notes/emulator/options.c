#include "options.h"

#include <errno.h>
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char options_help[] =
    "Runs a firmware for the ATmega328P at 16 MHz behind a pseudo-terminal.\n"
    "\n"
    "  board --elf FILE --link PATH [options]\n"
    "\n"
    "  --elf FILE          the firmware\n"
    "  --link PATH         a symbolic link to the serial device is made here\n"
    "  --eeprom HEX        what the EEPROM begins with, two digits a byte\n"
    "  --strip PIN         pin of the strip's data line (PD4)\n"
    "  --channels N        bytes a pixel, 3 or 4 (3)\n"
    "  --reset-us N        a low of so many microseconds latches the strip (280)\n"
    "  --threshold-ns N    a high longer than so many nanoseconds is a 1 (600)\n"
    "  --byte-cycles N     a byte from the host takes N clock cycles, whatever the baud registers say\n"
    "  --seed N            of the damage done by drop, flip and double (1)\n"
    "  --reset-on-open     reset the chip whenever the host opens the device\n"
    "  --free              run as fast as the machine allows, not in real time\n"
    "  --strict            end at the first overrun\n"
    "  --quiet             print no frames and no dimmers\n"
    "  --help\n"
    "\n"
    "  board --elf build/lampwright.elf --link build/tty\n"
    "\n"
    "Commands come on standard input, a line each: deaf MS, stall MS, drop|flip|double [up|down] N [every K], fuse,\n"
    "reset, brown_out, hang, unplug, plug, stats, quit. Exit status: 0, 1 it failed, 2 called wrongly, 3 there was an overrun, 4 the chip\n"
    "stopped, 5 the fuse blew.\n";

enum {
    OPTION_ELF = 256, OPTION_LINK, OPTION_EEPROM, OPTION_STRIP, OPTION_CHANNELS, OPTION_RESET, OPTION_THRESHOLD,
    OPTION_BYTE_CYCLES, OPTION_SEED, OPTION_RESET_ON_OPEN, OPTION_FREE, OPTION_STRICT, OPTION_QUIET, OPTION_HELP
};

static const struct option long_options[] = {
    {"elf", required_argument, NULL, OPTION_ELF},
    {"link", required_argument, NULL, OPTION_LINK},
    {"eeprom", required_argument, NULL, OPTION_EEPROM},
    {"strip", required_argument, NULL, OPTION_STRIP},
    {"channels", required_argument, NULL, OPTION_CHANNELS},
    {"reset-us", required_argument, NULL, OPTION_RESET},
    {"threshold-ns", required_argument, NULL, OPTION_THRESHOLD},
    {"byte-cycles", required_argument, NULL, OPTION_BYTE_CYCLES},
    {"seed", required_argument, NULL, OPTION_SEED},
    {"reset-on-open", no_argument, NULL, OPTION_RESET_ON_OPEN},
    {"free", no_argument, NULL, OPTION_FREE},
    {"strict", no_argument, NULL, OPTION_STRICT},
    {"quiet", no_argument, NULL, OPTION_QUIET},
    {"help", no_argument, NULL, OPTION_HELP},
    {0},
};

static bool complain(const char *option, const char *right)
{
    fprintf(stderr, "board: %s: %s\n", option, right);
    return false;
}

static bool read_number(const char *text, uint64_t least, uint64_t most, uint64_t *value)
{
    char *end;
    errno = 0;
    *value = strtoull(text, &end, 10);
    return text[0] >= '0' && text[0] <= '9' && *end == 0 && errno == 0 && *value >= least && *value <= most;
}

static bool read_pin(const char *text, struct board_options *board)
{
    if (strlen(text) != 3 || text[0] != 'P' || strchr("BCD", text[1]) == NULL || text[2] < '0' || text[2] > '7')
        return complain("--strip", "name a pin as PD4, ports B, C and D, 0 to 7");
    board->strip_port = text[1];
    board->strip_bit = text[2] - '0';
    return true;
}

static bool read_measure(int option, const char *text, struct options *options)
{
    uint64_t value;
    switch (option) {
    case OPTION_CHANNELS:
        if (!read_number(text, 3, 4, &value))
            return complain("--channels", "3 or 4");
        options->channels = (unsigned)value;
        return true;
    case OPTION_RESET:
        if (!read_number(text, 1, 1000000, &value))
            return complain("--reset-us", "microseconds, 1 to 1000000");
        options->board.reset_ps = value * 1000000;
        return true;
    case OPTION_THRESHOLD:
        if (!read_number(text, 1, 1000000, &value))
            return complain("--threshold-ns", "nanoseconds, 1 to 1000000");
        options->board.threshold_ps = value * 1000;
        return true;
    case OPTION_BYTE_CYCLES:
        return read_number(text, 1, 1000000, &options->board.byte_cycles)
            || complain("--byte-cycles", "clock cycles, 1 to 1000000");
    default:
        return read_number(text, 0, INT64_MAX, &options->board.seed) || complain("--seed", "a whole number from 0");
    }
}

static bool read_option(int option, struct options *options)
{
    switch (option) {
    case OPTION_ELF:
        options->elf = optarg;
        return true;
    case OPTION_LINK:
        options->link = optarg;
        return true;
    case OPTION_EEPROM:
        return image_read_eeprom(optarg, &options->eeprom)
            || complain("--eeprom", "1 to 1024 bytes, each as two hexadecimal digits");
    case OPTION_STRIP:
        return read_pin(optarg, &options->board);
    case OPTION_RESET_ON_OPEN:
        options->reset_on_open = true;
        return true;
    case OPTION_FREE:
        options->free = true;
        return true;
    case OPTION_STRICT:
        options->strict = true;
        return true;
    case OPTION_QUIET:
        options->quiet = true;
        return true;
    default:
        return read_measure(option, optarg, options);
    }
}

static bool is_complete(const struct options *options)
{
    if (options->elf == NULL)
        return complain("--elf", "name the firmware's file");
    if (options->link == NULL)
        return complain("--link", "name the path of the link to make");
    return true;
}

enum options_outcome options_read(struct options *options, int argc, char **argv)
{
    *options = (struct options){
        .board = {.strip_port = 'D', .strip_bit = 4, .threshold_ps = 600000, .reset_ps = 280000000, .seed = 1},
        .channels = 3,
    };
    for (int option; (option = getopt_long(argc, argv, "", long_options, NULL)) != -1;) {
        if (option == OPTION_HELP)
            return OPTIONS_HELP;
        if (option == '?' || !read_option(option, options))
            return OPTIONS_WRONG;
    }
    if (optind < argc) {
        complain(argv[optind], "no such argument; see --help");
        return OPTIONS_WRONG;
    }
    return is_complete(options) ? OPTIONS_GOOD : OPTIONS_WRONG;
}
