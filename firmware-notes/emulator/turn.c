#include "turn.h"

static void note(struct turn *turn, uint64_t took)
{
    turn->count++;
    turn->sum += took;
    if (took > turn->longest)
        turn->longest = took;
}

void turn_heard(struct turn *turn, uint64_t cycle)
{
    if (turn->spoke > 0)
        note(turn, turn->spoke - turn->heard);
    turn->heard = cycle;
    turn->spoke = 0;
}

void turn_spoke(struct turn *turn, uint64_t cycle)
{
    if (turn->heard > 0)
        turn->spoke = cycle;
}

void turn_break(struct turn *turn)
{
    turn->heard = 0;
    turn->spoke = 0;
}
