/**
 * The ceiling's formula (wire.md section 4), as the contracts have it; there is nothing here for the compiler.
 */
#ifndef FORMULA_H
#define FORMULA_H

#include "arithmetic.h"
#include "frame.h"
#include "setup.h"

/*@ // All in 1/65535 uA: what a channel of the strip takes, the first n channels (4 at most), a dimmer if it hangs on that supply, the
    // first n dimmers.
    logic integer channel_draw{L}(struct setup *setup, struct frame *frame, integer c) =
        draw(channel_sum(frame, setup->channels, c, frame->length), setup->channel_uA[c] * 257);
    logic integer strip_draw{L}(struct setup *setup, struct frame *frame, integer n) =
        n <= 0 ? 0 : strip_draw(setup, frame, n - 1) + channel_draw(setup, frame, n - 1);
    logic integer dimmer_draw{L}(struct setup *setup, struct frame *frame, integer supply, integer i) =
        setup->dimmer[i].supply == supply ? draw(frame->duty[i], setup->dimmer[i].full_mA * 1000) : 0;
    logic integer dimmers_draw{L}(struct setup *setup, struct frame *frame, integer supply, integer n) =
        n <= 0 ? 0 : dimmers_draw(setup, frame, supply, n - 1) + dimmer_draw(setup, frame, supply, n - 1);
    lemma next_channel{L}: \forall struct setup *setup, struct frame *frame, integer n; 0 <= n ==>
        strip_draw(setup, frame, n + 1) == strip_draw(setup, frame, n) + channel_draw(setup, frame, n);
    lemma next_dimmer{L}: \forall struct setup *setup, struct frame *frame, integer supply, n; 0 <= n ==>
        dimmers_draw(setup, frame, supply, n + 1) == dimmers_draw(setup, frame, supply, n) + dimmer_draw(setup, frame, supply, n);
    predicate same_dimmer{A, B}(struct setup *setup, struct frame *frame, integer i) =
        \at(setup->dimmer[i].supply, B) == \at(setup->dimmer[i].supply, A)
        && \at(setup->dimmer[i].full_mA, B) == \at(setup->dimmer[i].full_mA, A)
        && \at(frame->duty[i], B) == \at(frame->duty[i], A);
    lemma same_draw{A, B}: \forall struct setup *setup, struct frame *frame, integer supply, i; same_dimmer{A, B}(setup, frame, i) ==>
        dimmer_draw{B}(setup, frame, supply, i) == dimmer_draw{A}(setup, frame, supply, i);
    lemma same_next_dimmer{A, B}: \forall struct setup *setup, struct frame *frame, integer supply, n, next; 0 <= n && next == n + 1
        && dimmers_draw{B}(setup, frame, supply, n) == dimmers_draw{A}(setup, frame, supply, n) && same_dimmer{A, B}(setup, frame, n) ==>
        dimmers_draw{B}(setup, frame, supply, next) == dimmers_draw{A}(setup, frame, supply, next);
    lemma same_dimmers{A, B}: \forall struct setup *setup, struct frame *frame, integer supply, n;
        (\forall integer i; 0 <= i < n ==> same_dimmer{A, B}(setup, frame, i)) ==>
        dimmers_draw{B}(setup, frame, supply, n) == dimmers_draw{A}(setup, frame, supply, n);

    logic integer strip_formula{L}(struct setup *setup, struct frame *frame) = strip_draw(setup, frame, setup->channels);
    logic integer dimmers_formula{L}(struct setup *setup, struct frame *frame, integer supply) =
        dimmers_draw(setup, frame, supply, setup->dimmers);
    logic integer load_formula{L}(struct setup *setup, struct frame *frame, integer supply) =
        (setup->supply == supply ? strip_formula(setup, frame) : 0) + dimmers_formula(setup, frame, supply);
    logic integer idle_formula{L}(struct setup *setup, integer supply) =
        setup->supply == supply ? draw(setup->pixels, setup->dark_uA) * 65535 : 0;
    logic integer limit_formula{L}(struct setup *setup, integer supply) = setup->ceiling_mA[supply] * 1000 * 65535;

    // The frame is whole, and of the set-up's size.
    predicate fits{L}(struct setup *setup, struct frame *frame) = setup_good(setup) && frame->channels == setup->channels
        && frame->length == setup->pixels * setup->channels && frame->at == frame->length;
    predicate within{L}(struct setup *setup, struct frame *frame, integer supply) =
        idle_formula(setup, supply) + load_formula(setup, frame, supply) <= limit_formula(setup, supply);
    predicate all_dark{L}(struct setup *setup, struct frame *frame, integer supply) =
        (setup->supply == supply ==> \forall integer i; 0 <= i < frame->length ==> frame->bytes[i] == 0)
        && \forall integer i; 0 <= i < setup->dimmers && setup->dimmer[i].supply == supply ==> frame->duty[i] == 0;
    // The supply is within its ceiling, or what hangs on it is dark, where its dark strip is over by itself.
    predicate held{L}(struct setup *setup, struct frame *frame, integer supply) =
        idle_formula(setup, supply) <= limit_formula(setup, supply) ? within(setup, frame, supply) : all_dark(setup, frame, supply);

    // What both of a supply's parts leave by a factor is within the share of what they took together.
    lemma load_with_strip{L}: \forall struct setup *setup, struct frame *frame, integer supply; setup->supply == supply ==>
        load_formula(setup, frame, supply) == strip_formula(setup, frame) + dimmers_formula(setup, frame, supply);
    lemma load_without_strip{L}: \forall struct setup *setup, struct frame *frame, integer supply; setup->supply != supply ==>
        load_formula(setup, frame, supply) == dimmers_formula(setup, frame, supply);

    // The set-up, and the size of the frame, are the same in two states.
    predicate same_setup{A, B}(struct setup *setup) =
        \at(setup->pixels, B) == \at(setup->pixels, A) && \at(setup->channels, B) == \at(setup->channels, A)
        && \at(setup->dark_uA, B) == \at(setup->dark_uA, A) && \at(setup->supply, B) == \at(setup->supply, A)
        && \at(setup->supplies, B) == \at(setup->supplies, A) && \at(setup->dimmers, B) == \at(setup->dimmers, A)
        && \at(setup->runs, B) == \at(setup->runs, A)
        && (\forall integer c; 0 <= c < CHANNELS ==> \at(setup->channel_uA[c], B) == \at(setup->channel_uA[c], A))
        && (\forall integer s; 0 <= s < SUPPLIES ==> \at(setup->ceiling_mA[s], B) == \at(setup->ceiling_mA[s], A))
        && (\forall integer i; 0 <= i < DIMMERS ==> \at(setup->dimmer[i].supply, B) == \at(setup->dimmer[i].supply, A)
            && \at(setup->dimmer[i].full_mA, B) == \at(setup->dimmer[i].full_mA, A))
        && (\forall integer i; 0 <= i < OUTPUTS ==> \at(setup->run[i].output, B) == \at(setup->run[i].output, A));
    predicate same_size{A, B}(struct frame *frame) = \at(frame->length, B) == \at(frame->length, A)
        && \at(frame->channels, B) == \at(frame->channels, A) && \at(frame->at, B) == \at(frame->at, A);
    lemma fits_again{A, B}: \forall struct setup *setup, struct frame *frame;
        fits{A}(setup, frame) && same_setup{A, B}(setup) && same_size{A, B}(frame) ==> fits{B}(setup, frame);
    lemma idle_again{A, B}: \forall struct setup *setup, integer supply; same_setup{A, B}(setup) ==>
        idle_formula{B}(setup, supply) == idle_formula{A}(setup, supply);
    lemma limit_again{A, B}: \forall struct setup *setup, integer supply; same_setup{A, B}(setup) && 0 <= supply < SUPPLIES ==>
        limit_formula{B}(setup, supply) == limit_formula{A}(setup, supply);
    lemma held_again{A, B}: \forall struct setup *setup, struct frame *frame, integer supply;
        0 <= supply < SUPPLIES && same_setup{A, B}(setup) && held{A}(setup, frame, supply)
        && load_formula{B}(setup, frame, supply) == load_formula{A}(setup, frame, supply)
        && (all_dark{A}(setup, frame, supply) ==> all_dark{B}(setup, frame, supply)) ==> held{B}(setup, frame, supply);
*/

#endif
