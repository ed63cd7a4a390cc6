#include "budget.h"

#include "bits.h"

#define UA_PER_MA 1000ul

/* Subtracts a cost from what is left. Nothing is added up, so nothing overflows. */
/*@ requires \valid(left);
    assigns *left;
    ensures \result ? *left == \old(*left) - cost : *left == \old(*left);
*/
static bool spend(uint32_t *left, uint32_t cost)
{
    if (cost > *left)
        return false;
    *left -= cost;
    return true;
}

/* From uA to units: 255 / 256 of it, rounded down. */
/*@ requires \valid(left);
    assigns *left;
    ensures \result ==> 256 * *left <= 255 * \old(*left);
*/
static bool change(uint32_t *left)
{
    return spend(left, (*left >> 8) + 1);
}

/* A sum is at most 65000 / 3 x 255, and a channel at most 256 units. */
/*@ requires sum <= 255 * 65000;
    assigns \nothing;
    ensures draw(sum, channel_uA * 257) <= 65792 * \result;
*/
static uint32_t channel_cost(uint32_t sum, uint16_t channel_uA)
{
    uint16_t units = (uint16_t)((channel_uA >> 8) + 1);
    //@ assert units == channel_uA / 256 + 1 && channel_uA <= 256 * units && units <= 256;
    //@ assert sum * units <= 255 * 65000 * 256;
    //@ assert draw(sum, channel_uA * 257) <= draw(sum, 65792 * units);
    return sum * units;
}

/* duty < steps x 256, and 1000 / 257 < 4. */
/*@ assigns \nothing;
    ensures draw(duty, full_mA * 1000) <= 65792 * \result;
*/
static uint32_t dimmer_cost(uint16_t duty, uint16_t full_mA)
{
    uint16_t steps = (uint16_t)((duty >> 8) + 1);
    //@ assert steps == duty / 256 + 1 && duty <= 256 * steps && steps <= 256;
    //@ assert steps * full_mA <= 256 * full_mA;
    //@ assert draw(duty, full_mA * 1000) <= draw(256 * steps, full_mA * 1000);
    return (uint32_t)steps * full_mA * 4;
}

/*@ requires \valid_read(setup) && \valid_read(frame) && \valid(left) && fits(setup, frame) && frame_true(frame);
    requires \separated(setup, left) && \separated(frame, left);
    assigns *left;
    ensures \result ==> strip_formula(setup, frame) <= 65792 * (\old(*left) - *left);
*/
static bool spend_strip(const struct setup *setup, const struct frame *frame, uint32_t *left)
{
    /*@ loop invariant 0 <= i <= setup->channels;
        loop invariant strip_draw(setup, frame, i) <= 65792 * (\at(*left, Pre) - *left);
        loop assigns i, *left;
        loop variant setup->channels - i;
    */
    for (uint8_t i = 0; i < setup->channels; i++) {
        //@ assert summed(frame, i) == channel_sum(frame, frame->channels, i, frame->at);
        //@ assert summed(frame, i) == channel_sum(frame, setup->channels, i, frame->length);
        //@ assert channel_draw(setup, frame, i) == draw(summed(frame, i), setup->channel_uA[i] * 257);
        //@ assert strip_draw(setup, frame, i + 1) == strip_draw(setup, frame, i) + channel_draw(setup, frame, i);
        if (!spend(left, channel_cost(frame_sum(frame, i), setup->channel_uA[i])))
            return false;
    }
    return true;
}

/*@ requires \valid_read(setup) && \valid_read(frame) && \valid(left) && fits(setup, frame);
    requires \separated(setup, left) && \separated(frame, left);
    assigns *left;
    ensures \result ==> dimmers_formula(setup, frame, supply) <= 65792 * (\old(*left) - *left);
*/
static bool spend_dimmers(const struct setup *setup, const struct frame *frame, uint8_t supply, uint32_t *left)
{
    /*@ loop invariant 0 <= i <= setup->dimmers;
        loop invariant dimmers_draw(setup, frame, supply, i) <= 65792 * (\at(*left, Pre) - *left);
        loop assigns i, *left;
        loop variant setup->dimmers - i;
    */
    for (uint8_t i = 0; i < setup->dimmers; i++) {
        /*@ assert dimmers_draw(setup, frame, supply, i + 1)
                == dimmers_draw(setup, frame, supply, i) + dimmer_draw(setup, frame, supply, i); */
        if (setup->dimmer[i].supply == supply && !spend(left, dimmer_cost(frame->duty[i], setup->dimmer[i].full_mA)))
            return false;
    }
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
