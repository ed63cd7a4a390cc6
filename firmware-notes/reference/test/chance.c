#include "chance.h"

static uint64_t state = 1;

void chance_seed(uint64_t seed)
{
    state = seed;
}

uint32_t chance(uint32_t below)
{
    state ^= state >> 12;
    state ^= state << 25;
    state ^= state >> 27;
    return (uint32_t)((state * 0x2545F4914F6CDD1Dull) >> 32) % below;
}
