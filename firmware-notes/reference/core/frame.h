/**
 * The frame under construction: bytes of the strip, the sum of each channel, and a duty for each dimmer. There is one store, the board's
 * largest block of memory; a shown frame lives on in the strip, which latches it.
 */
#ifndef FRAME_H
#define FRAME_H

#include <stdbool.h>
#include <stdint.h>

#include "arithmetic.h"
#include "limits.h"

/** A sum in two halves: most bytes are added to the low half only, which takes an 8-bit chip half the time. */
struct sum {
    uint16_t low;
    uint16_t high;
};

/** A frame. All zero, it is a dark frame of no bytes, which can be shown but not opened or filled before frame_clear. */
struct frame {
    /* 0 past `length`. Aligned, so that a board may copy it by words. */
    uint8_t bytes[STORE_BYTES] __attribute__((aligned(__alignof__(uint32_t))));
    uint16_t duty[DIMMERS];      /* 0 to 65535 */
    struct sum sum[CHANNELS];    /* of the bytes of each channel before `at` */
    uint16_t at;                 /* where the next byte goes */
    uint16_t length;             /* bytes of strip in a whole frame, 0 to STORE_BYTES */
    uint8_t channel;             /* of the next byte */
    uint8_t channels;            /* of a pixel, 3 or 4 */
};

/*@ predicate frame_open_to(struct frame *frame) =
        frame->length <= STORE_BYTES && frame->at <= frame->length
        && (frame->channels == 3 || frame->channels == 4) && frame->channel < frame->channels;
    logic integer summed{L}(struct frame *frame, integer channel) = 65536 * frame->sum[channel].high + frame->sum[channel].low;
    // Of the first n bytes, those of one channel, with so many channels to a pixel.
    logic integer channel_sum{L}(struct frame *frame, integer channels, integer channel, integer n) =
        n <= 0 ? 0 : channel_sum(frame, channels, channel, n - 1)
            + ((n - 1) % channels == channel ? frame->bytes[n - 1] : 0);
    // The sums are those of the bytes that have been put.
    predicate frame_true{L}(struct frame *frame) = frame->channel == frame->at % frame->channels
        && \forall integer c; 0 <= c < frame->channels ==>
            summed(frame, c) == channel_sum(frame, frame->channels, c, frame->at) && summed(frame, c) <= 255 * frame->at;

    lemma next_of_channel{L}: \forall struct frame *frame, integer channels, channel, n; 0 <= n && n % channels == channel ==>
        channel_sum(frame, channels, channel, n + 1) == channel_sum(frame, channels, channel, n) + frame->bytes[n];
    lemma next_of_other{L}: \forall struct frame *frame, integer channels, channel, n; 0 <= n && n % channels != channel ==>
        channel_sum(frame, channels, channel, n + 1) == channel_sum(frame, channels, channel, n);
    lemma same_sum{A, B}: \forall struct frame *frame, integer channels, channel, n;
        (\forall integer i; 0 <= i < n ==> \at(frame->bytes[i], B) == \at(frame->bytes[i], A)) ==>
        channel_sum{B}(frame, channels, channel, n) == channel_sum{A}(frame, channels, channel, n);
    predicate same_frame{A, B}(struct frame *frame) = \at(frame->at, B) == \at(frame->at, A)
        && \at(frame->length, B) == \at(frame->length, A) && \at(frame->channel, B) == \at(frame->channel, A)
        && \at(frame->channels, B) == \at(frame->channels, A)
        && (\forall integer i; 0 <= i < STORE_BYTES ==> \at(frame->bytes[i], B) == \at(frame->bytes[i], A))
        && (\forall integer c; 0 <= c < CHANNELS ==> summed{B}(frame, c) == summed{A}(frame, c));
    lemma true_again{A, B}: \forall struct frame *frame;
        same_frame{A, B}(frame) && \at(frame->channels, A) <= CHANNELS && \at(frame->at, A) <= STORE_BYTES && frame_true{A}(frame) ==>
        frame_true{B}(frame);
*/

/**
 * Makes every byte and duty 0 and sets the size: `length` is a multiple of `channels`, 0 to STORE_BYTES; `channels` is 3
 * or 4. The frame is open.
 */
/*@ requires \valid(frame) && length <= STORE_BYTES && (channels == 3 || channels == 4);
    assigns *frame;
    ensures frame_open_to(frame) && frame->at == 0 && frame->length == length && frame->channels == channels;
    ensures frame_true(frame);
*/
void frame_clear(struct frame *frame, uint16_t length, uint8_t channels);

/** Opens the frame: the next byte is its first. The old contents stay until they are overwritten. */
/*@ requires \valid(frame);
    assigns frame->at, frame->channel, frame->sum[0 .. CHANNELS - 1];
    ensures frame->at == 0 && frame->channel == 0;
    ensures \forall integer c; 0 <= c < CHANNELS ==> summed(frame, c) == 0;
    ensures frame->channels == 3 || frame->channels == 4 ==> frame_true(frame);
*/
void frame_open(struct frame *frame);

/** Bytes still missing since the frame was opened. */
/*@ requires \valid_read(frame) && frame->at <= frame->length;
    assigns \nothing;
    ensures \result == frame->length - frame->at;
*/
uint16_t frame_room(const struct frame *frame);

/** The sum of a channel's bytes so far. */
/*@ requires \valid_read(frame) && channel < CHANNELS;
    assigns \nothing;
    ensures \result == summed(frame, channel);
*/
static inline uint32_t frame_sum(const struct frame *frame, uint8_t channel)
{
    return frame->sum[channel].high * 65536ul + frame->sum[channel].low;
}

/** Puts the next `count` bytes, 0 to frame_room of them. */
/*@ requires \valid(frame) && frame_open_to(frame) && count <= frame->length - frame->at;
    requires \valid_read(bytes + (0 .. count - 1)) && \separated(frame, bytes + (0 .. count - 1));
    assigns frame->bytes[frame->at .. frame->at + count - 1], frame->at, frame->channel, frame->sum[0 .. CHANNELS - 1];
    ensures frame_open_to(frame) && frame->at == \old(frame->at) + count;
    ensures \old(frame_true(frame)) ==> frame_true(frame);
*/
void frame_put(struct frame *frame, const uint8_t *bytes, uint8_t count);

#endif
