/**
 * A quick 32-bit check of the ceiling: it passes nearly every frame within it, and never one over it. Only what it does not pass needs the
 * exact 64-bit calculation, which takes an 8-bit chip three times as long.
 *
 * The unit is 256/255 uA. With every current rounded up and the room rounded down, what is within this budget is within the formula of
 * wire.md section 4, which in that unit reads
 *
 * sum of (channel's bytes x channel_uA / 256) + sum of (duty x full_mA x 1000 / 257 / 256) <= (ceiling - idle in uA) x 255 / 256
 */
#ifndef BUDGET_H
#define BUDGET_H

#include <stdbool.h>
#include <stdint.h>

#include "formula.h"
#include "frame.h"
#include "setup.h"

/** Whether this frame, full and of the size that `setup` gives, is certainly within the ceiling of `supply`. False if in doubt. */
/*@ requires \valid_read(setup) && \valid_read(frame) && fits(setup, frame) && supply < setup->supplies;
    requires setup->supply == supply ==> frame_true(frame);
    assigns \nothing;
    ensures \result ==> idle_formula(setup, supply) <= limit_formula(setup, supply) && within(setup, frame, supply);
*/
bool budget_keeps(const struct setup *setup, const struct frame *frame, uint8_t supply);

#endif
