/** Random numbers that are the same on every machine: xorshift64* (Marsaglia 2003, Vigna 2016). */
#ifndef CHANCE_H
#define CHANCE_H

#include <stdint.h>

/** Restarts from a seed, not 0. */
void chance_seed(uint64_t seed);

/** A number from 0 to `below` - 1. `below` is 1 or more. */
uint32_t chance(uint32_t below);

#endif
