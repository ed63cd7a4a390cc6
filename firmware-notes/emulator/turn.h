#ifndef LAMPWRIGHT_TURN_H
#define LAMPWRIGHT_TURN_H

#include <stdint.h>

/*
 * How long the chip takes to answer: from the end of the last byte that the host sent to the end of the last byte that the chip sent before
 * the host sent again. Two bytes from the host with nothing in between do not make a turn. Times are clock cycles.
 */
struct turn {
    uint64_t count;                     /* turns that are over */
    uint64_t longest;
    uint64_t sum;
    uint64_t heard;                     /* end of the last byte from the host */
    uint64_t spoke;                     /* end of the last byte from the chip since then; 0: none */
};

/* A byte from the host has ended: the previous turn, if there was one, is over. */
void turn_heard(struct turn *turn, uint64_t cycle);

/* A byte from the chip has ended. */
void turn_spoke(struct turn *turn, uint64_t cycle);

/* The chip was reset: what it sends next is not an answer. */
void turn_break(struct turn *turn);

#endif
