#include "pace.h"

/* How far a free board runs before it looks at its inputs again. */
static const uint64_t free_step_us = 250;

void pace_start(struct pace *pace, bool free, uint64_t clock_hz, uint64_t now_ns, uint64_t cycle)
{
    *pace = (struct pace){.free = free, .clock_hz = clock_hz};
    pace_forgive(pace, now_ns, cycle);
}

static uint64_t real_cycle(const struct pace *pace, uint64_t now_ns)
{
    uint64_t passed_ns = now_ns - pace->real_ns;
    uint64_t whole_s = passed_ns / 1000000000;
    uint64_t rest_ns = passed_ns % 1000000000;
    return pace->cycle + whole_s * pace->clock_hz + rest_ns * pace->clock_hz / 1000000000;
}

uint64_t pace_target(struct pace *pace, uint64_t now_ns, uint64_t cycle)
{
    if (pace->free)
        return cycle + free_step_us * pace->clock_hz / 1000000;
    uint64_t target = real_cycle(pace, now_ns);
    uint64_t most_cycles = PACE_MOST_LAG_NS / 1000 * pace->clock_hz / 1000000;
    if (target <= cycle + most_cycles)
        return target;
    uint64_t over = target - cycle - most_cycles;
    pace->lost_ns += over * 1000000000 / pace->clock_hz;
    pace->cycle -= over;
    return cycle + most_cycles;
}

void pace_forgive(struct pace *pace, uint64_t now_ns, uint64_t cycle)
{
    pace->real_ns = now_ns;
    pace->cycle = cycle;
}
