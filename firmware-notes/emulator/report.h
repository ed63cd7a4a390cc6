#ifndef LAMPWRIGHT_REPORT_H
#define LAMPWRIGHT_REPORT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include "board.h"
#include "command.h"
#include "json.h"
#include "pace.h"
#include "pty.h"

/* Everything that the board prints on its standard output, one JSON object per line. README.md describes the keys. */

struct report {
    FILE *out;
    struct json json;
    const struct board *board;
    unsigned channels;
    bool quiet;
    bool failed;                        /* the output accepted no more */

    uint64_t overruns;
    uint64_t overruns_hurt;             /* those caused by trouble on purpose */
    uint64_t receiver_off;
    uint64_t unheard;
    uint64_t bytes_up;
    uint64_t bytes_up_lost;
    struct strip_frame latest;
    struct dimmer dimmers[DIMMER_OUTPUTS];
};

void report_start(struct report *report, FILE *out, const struct board *board, unsigned channels, bool quiet);
void report_free(struct report *report);

/* The device can be opened. */
void report_ready(struct report *report, const char *link, const char *elf);

void report_frame(struct report *report, const struct strip_frame *frame);

/* Prints the dimmers if they have changed since they were last printed. */
void report_dimmers(struct report *report);

/* A byte was lost on its way to the firmware. Returns true if the firmware is to blame. */
bool report_lost(struct report *report, enum usart_loss loss, uint8_t byte, bool hurt);

/* An event that is not an error: "reset", "watchdog", "opened", "closed". */
void report_event(struct report *report, const char *event);

/* The chip or the board cannot continue. */
void report_failure(struct report *report, const char *error, const char *reason);

void report_done(struct report *report, const char *command);
void report_refused(struct report *report, const char *line, const char *complaint);
void report_stats(struct report *report, const struct pace *pace, const struct pty *pty);
void report_end(struct report *report, int status);

#endif
