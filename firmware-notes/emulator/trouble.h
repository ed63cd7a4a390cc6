#ifndef LAMPWRIGHT_TROUBLE_H
#define LAMPWRIGHT_TROUBLE_H

#include <stdbool.h>
#include <stdint.h>

/*
 * Deliberate damage to the bytes of one direction of the line: bytes dropped, with one bit flipped, or doubled. The same seed and commands
 * damage the same bytes in the same way.
 */

enum trouble_kind { TROUBLE_DROP, TROUBLE_FLIP, TROUBLE_DOUBLE, TROUBLE_KINDS };

struct trouble_order {
    uint64_t left;                      /* bytes still to be damaged */
    uint64_t every;                     /* one byte in each run of this many */
    uint64_t place;                     /* in the current run, 0 to every - 1 */
    uint64_t chosen;                    /* the place that is damaged */
};

struct trouble {
    uint64_t random;
    struct trouble_order order[TROUBLE_KINDS];
    uint64_t hurt[TROUBLE_KINDS];       /* bytes damaged since the start */
};

/* What becomes of one byte. */
struct trouble_outcome {
    uint8_t bytes[2];
    unsigned count;                     /* 0, 1 or 2 */
    bool hurt;
};

void trouble_start(struct trouble *trouble, uint64_t seed);

/* Damages `count` bytes from now on, one in each run of `every` (1 or more); replaces a command of the same kind. */
void trouble_set(struct trouble *trouble, enum trouble_kind kind, uint64_t count, uint64_t every);

struct trouble_outcome trouble_pass(struct trouble *trouble, uint8_t byte);

#endif
