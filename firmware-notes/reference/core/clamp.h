/** The current ceiling (wire.md section 4), in whole numbers. In units of 1/65535 uA, nothing needs rounding. */
#ifndef CLAMP_H
#define CLAMP_H

#include <stdbool.h>
#include <stdint.h>

#include "formula.h"
#include "frame.h"
#include "setup.h"

/**
 * Enforces the ceiling of every supply: if a supply would have to deliver more, dims everything connected to it by one factor. The frame is
 * full, and of the size that `setup` gives; it is changed in place, its sums are not. Returns whether anything was over its ceiling.
 * Afterwards nothing is, except a dark strip that is over by itself (clamp_dark_over), which stays dark.
 */
/*@ requires \valid_read(setup) && \valid(frame) && \separated(setup, frame) && fits(setup, frame) && frame_true(frame);
    assigns frame->bytes[0 .. STORE_BYTES - 1], frame->duty[0 .. DIMMERS - 1];
    ensures \forall integer supply; 0 <= supply < setup->supplies ==> held(setup, frame, supply);
*/
bool clamp_frame(const struct setup *setup, struct frame *frame);

/**
 * The current of the dark strip in mA, rounded up, if that alone is over the ceiling of its supply; otherwise 0. 65535 also stands for
 * anything more.
 */
/*@ requires \valid_read(setup) && setup_good(setup);
    assigns \nothing;
    ensures \result == 0 <==> idle_formula(setup, setup->supply) <= limit_formula(setup, setup->supply);
*/
uint16_t clamp_dark_over(const struct setup *setup);

#endif
