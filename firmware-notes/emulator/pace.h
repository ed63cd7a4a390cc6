#ifndef LAMPWRIGHT_PACE_H
#define LAMPWRIGHT_PACE_H

#include <stdbool.h>
#include <stdint.h>

/*
 * Ties emulated time to real time: the chip may run up to real time, and no further. A board that falls behind by more than
 * PACE_MOST_LAG_NS gives up the rest instead of catching up.
 */

#define PACE_MOST_LAG_NS 20000000ull

struct pace {
    bool free;
    uint64_t clock_hz;
    uint64_t real_ns;
    uint64_t cycle;
    uint64_t lost_ns;                   /* given up since the start */
};

/* With `free`, real time is ignored. */
void pace_start(struct pace *pace, bool free, uint64_t clock_hz, uint64_t now_ns, uint64_t cycle);

/* The cycle that the chip, now at `cycle`, may run to. */
uint64_t pace_target(struct pace *pace, uint64_t now_ns, uint64_t cycle);

/* Real time has passed that the chip is not to catch up on. */
void pace_forgive(struct pace *pace, uint64_t now_ns, uint64_t cycle);

#endif
