/** A board on the bench: a port of the core that records what the core does, and the controller that runs on it. */
#ifndef BENCH_H
#define BENCH_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "controller.h"

/** Maximum line bytes recorded between two calls of bench_forget. */
#define BENCH_SENT_MOST 65536

/** What the core did. */
struct bench {
    struct controller controller;
    uint32_t now_ms;
    uint8_t sent[BENCH_SENT_MOST];
    size_t sent_count;
    uint8_t strip[STORE_BYTES]; /* of the last drive */
    uint16_t strip_length;      /* likewise */
    int drives;                 /* of the strip, even of no bytes */
    uint16_t duty[DIMMERS];
    bool latched;                   /* what the board reports about the strip */
    uint8_t shown[STORE_BYTES];     /* what the strip shows: what was driven last, once it has latched */
    void (*changed)(void);          /* called whenever the strip is driven or latches, or a dimmer is set; may be NULL */
};

/** The one bench. */
extern struct bench bench;

/** A fresh, started board; what it drove and sent at the start is forgotten. */
void bench_start(void);

/** Forgets what was sent and how often the strip was driven. */
void bench_forget(void);

/** The line delivers bytes; the core receives them in random pieces of 1 to `piece` bytes, 255 at most. */
void bench_line(const uint8_t *bytes, size_t count, uint8_t piece);

/** The strip latches what was driven last. */
void bench_latch(void);

/** The strip latches, and the controller has noticed; no other time passes. */
void bench_settle(void);

/** Time passes, a millisecond at a time; a strip latches within one. */
void bench_wait(uint32_t ms);

#endif
