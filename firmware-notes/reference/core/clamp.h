/**
 * The current ceiling (wire.md section 4), in whole numbers. The unit is 1/65535 uA, in which nothing needs rounding.
 */
#ifndef CLAMP_H
#define CLAMP_H

#include <stdbool.h>
#include <stdint.h>

#include "frame.h"
#include "setup.h"

/*@ // The formula of wire.md, section 4, in 1/65535 uA, with the sums of the channels as the frame has them.
    logic integer summed{L}(struct frame *frame, integer channel) = 65536 * frame->sum[channel].high + frame->sum[channel].low;
    logic integer channels_load{L}(struct setup *setup, struct frame *frame, integer n) =
        n <= 0 ? 0 : channels_load(setup, frame, n - 1) + summed(frame, n - 1) * (setup->channel_uA[n - 1] * 257);
    logic integer dimmers_draw{L}(struct setup *setup, struct frame *frame, integer supply, integer n) =
        n <= 0 ? 0 : dimmers_draw(setup, frame, supply, n - 1)
            + (setup->dimmer[n - 1].supply == supply ? frame->duty[n - 1] * setup->dimmer[n - 1].full_mA : 0);
    logic integer strip_formula{L}(struct setup *setup, struct frame *frame) = channels_load(setup, frame, setup->channels);
    logic integer dimmers_formula{L}(struct setup *setup, struct frame *frame, integer supply) =
        dimmers_draw(setup, frame, supply, setup->dimmers);
    logic integer load_formula{L}(struct setup *setup, struct frame *frame, integer supply) =
        (setup->supply == supply ? strip_formula(setup, frame) : 0) + dimmers_formula(setup, frame, supply) * 1000;
    logic integer idle_formula{L}(struct setup *setup, integer supply) =
        setup->supply == supply ? setup->pixels * setup->dark_uA * 65535 : 0;
    logic integer limit_formula{L}(struct setup *setup, integer supply) = setup->ceiling_mA[supply] * 1000 * 65535;
    logic integer share(integer value, integer factor) = value * factor / 65536;
    predicate setup_good{L}(struct setup *setup) = (setup->channels == 3 || setup->channels == 4)
        && setup->pixels * setup->channels <= STORE_BYTES && setup->supply < setup->supplies <= SUPPLIES
        && setup->dimmers <= DIMMERS;
    predicate fits{L}(struct setup *setup, struct frame *frame) = setup_good(setup) && frame->channels == setup->channels
        && frame->length == setup->pixels * setup->channels;
*/

/**
 * Holds the ceiling of every supply: where a supply would be asked for more, dims all that hangs on it by one factor. The
 * frame is full, and of the size that `setup` gives; it is changed in place, its sums are not. Answers whether anything was
 * over its ceiling. Afterwards nothing is, but for a dark strip that is over by itself (clamp_dark_over), which stays dark.
 */
/*@ requires \valid_read(setup) && \valid(frame) && \separated(setup, frame) && fits(setup, frame);
    assigns frame->bytes[0 .. STORE_BYTES - 1], frame->duty[0 .. DIMMERS - 1];
*/
bool clamp_frame(const struct setup *setup, struct frame *frame);

/**
 * The current of the dark strip in mA, rounded up, if that alone is over the ceiling of its supply; else 0. 65535 stands for all
 * that is more.
 */
uint16_t clamp_dark_over(const struct setup *setup);

#endif
