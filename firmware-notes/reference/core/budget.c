#include "budget.h"

#define UA_PER_MA 1000ul

/* Takes a cost out of what is left. Nothing is summed up, so nothing runs over. */
static bool spend(uint32_t *left, uint32_t cost)
{
    if (cost > *left)
        return false;
    *left -= cost;
    return true;
}

/* From uA to units: 255 / 256 of it, rounded down. */
static bool change(uint32_t *left)
{
    return spend(left, (*left >> 8) + 1);
}

/* A sum is at most 65000 / 3 x 255, and a channel at most 256 units. */
static uint32_t channel_cost(uint32_t sum, uint16_t channel_uA)
{
    uint16_t units = (uint16_t)((channel_uA >> 8) + 1);
    return sum * units;
}

/* duty < steps x 256, and 1000 / 257 < 4. */
static uint32_t dimmer_cost(uint16_t duty, uint16_t full_mA)
{
    uint16_t steps = (uint16_t)((duty >> 8) + 1);
    return (uint32_t)steps * full_mA * 4;
}

static bool spend_strip(const struct setup *setup, const struct frame *frame, uint32_t *left)
{
    for (uint8_t i = 0; i < setup->channels; i++)
        if (!spend(left, channel_cost(frame_sum(frame, i), setup->channel_uA[i])))
            return false;
    return true;
}

static bool spend_dimmers(const struct setup *setup, const struct frame *frame, uint8_t supply, uint32_t *left)
{
    for (uint8_t i = 0; i < setup->dimmers; i++)
        if (setup->dimmer[i].supply == supply && !spend(left, dimmer_cost(frame->duty[i], setup->dimmer[i].full_mA)))
            return false;
    return true;
}

bool budget_keeps(const struct setup *setup, const struct frame *frame, uint8_t supply)
{
    uint32_t left = setup->ceiling_mA[supply] * UA_PER_MA;
    bool has_strip = setup->supply == supply;
    if (has_strip && !spend(&left, (uint32_t)setup->pixels * setup->dark_uA))
        return false;
    if (!change(&left))
        return false;
    if (has_strip && !spend_strip(setup, frame, &left))
        return false;
    return spend_dimmers(setup, frame, supply, &left);
}
