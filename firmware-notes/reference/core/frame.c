#include "frame.h"

#include "bits.h"

void frame_clear(struct frame *frame, uint16_t length, uint8_t channels)
{
    frame_open(frame);
    frame->length = length;
    frame->channels = channels;
    /*@ loop invariant 0 <= i <= STORE_BYTES;
        loop assigns i, frame->bytes[0 .. STORE_BYTES - 1];
        loop variant STORE_BYTES - i;
    */
    for (uint16_t i = 0; i < STORE_BYTES; i++)
        frame->bytes[i] = 0;
    /*@ loop invariant 0 <= i <= DIMMERS;
        loop assigns i, frame->duty[0 .. DIMMERS - 1];
        loop variant DIMMERS - i;
    */
    for (uint8_t i = 0; i < DIMMERS; i++)
        frame->duty[i] = 0;
    //@ assert \forall integer c; 0 <= c < CHANNELS ==> summed(frame, c) == 0;
    //@ assert 0 % frame->channels == 0;
    //@ assert \forall integer c; channel_sum(frame, frame->channels, c, 0) == 0;
}

void frame_open(struct frame *frame)
{
    frame->at = 0;
    frame->channel = 0;
    /*@ loop invariant 0 <= i <= CHANNELS;
        loop invariant \forall integer c; 0 <= c < i ==> summed(frame, c) == 0;
        loop assigns i, frame->sum[0 .. CHANNELS - 1];
        loop variant CHANNELS - i;
    */
    for (uint8_t i = 0; i < CHANNELS; i++) {
        frame->sum[i].low = 0;
        frame->sum[i].high = 0;
    }
    //@ assert frame->channels != 0 ==> 0 % frame->channels == 0;
    //@ assert \forall integer c; channel_sum(frame, frame->channels, c, 0) == 0;
}

uint16_t frame_room(const struct frame *frame)
{
    return (uint16_t)(frame->length - frame->at);
}

/*@ requires \valid(sum);
    assigns *sum;
    ensures \old(65536 * sum->high + sum->low) + byte <= 4294967295 ==>
        65536 * sum->high + sum->low == \old(65536 * sum->high + sum->low) + byte;
*/
static inline void add(struct sum *sum, uint8_t byte)
{
    sum->low = (uint16_t)(sum->low + byte);
    /*@ assert sum->low == (\at(sum->low, Pre) + byte <= 65535 ? \at(sum->low, Pre) + byte
            : \at(sum->low, Pre) + byte - 65536); */
    if (sum->low < byte)
        sum->high++;
}

/*
 * Runs for every byte of the strip while the next arrives, often with a stretch of one or two bytes: the cost per call matters as much as
 * the cost per byte.
 */
void frame_put(struct frame *frame, const uint8_t *bytes, uint8_t count)
{
    uint8_t *to = frame->bytes + frame->at;
    uint8_t channels = frame->channels;
    uint8_t left = (uint8_t)(channels - frame->channel);
    struct sum *sum = &frame->sum[frame->channel];
    //@ ghost uint16_t put = frame->at;
    frame->at = (uint16_t)(frame->at + count);
    /*@ loop invariant 0 <= count <= \at(count, Pre) && put == \at(frame->at, Pre) + (\at(count, Pre) - count);
        loop invariant to == frame->bytes + put;
        loop invariant bytes == \at(bytes, Pre) + (\at(count, Pre) - count);
        loop invariant 1 <= left <= channels;
        loop invariant sum == frame->sum + (channels - left);
        loop invariant \at(frame_true(frame), Pre) ==> channels - left == put % channels;
        loop invariant \at(frame_true(frame), Pre) ==> \forall integer c; 0 <= c < channels ==>
            summed(frame, c) == channel_sum(frame, channels, c, put) && summed(frame, c) <= 255 * put;
        loop assigns count, put, to, bytes, left, sum, frame->sum[0 .. CHANNELS - 1],
            frame->bytes[\at(frame->at, Pre) .. \at(frame->at, Pre) + \at(count, Pre) - 1];
        loop variant count;
    */
    for (; count > 0; count--) {
        //@ ghost uint8_t channel = (uint8_t)(channels - left);
        uint8_t byte = *bytes++;
        *to++ = byte;
        //@ assert \forall integer c; channel_sum(frame, channels, c, put) == channel_sum{LoopCurrent}(frame, channels, c, put);
        add(sum++, byte);
        //@ assert frame->bytes[put] == byte;
        /*@ assert \forall integer c; 0 <= c < channels && c != channel ==>
                summed(frame, c) == summed{LoopCurrent}(frame, c); */
        /*@ assert \at(frame_true(frame), Pre) ==>
                summed(frame, channel) == summed{LoopCurrent}(frame, channel) + byte; */
        //@ assert \forall integer c; channel_sum(frame, channels, c, put) == channel_sum{LoopCurrent}(frame, channels, c, put);
        //@ assert \at(frame_true(frame), Pre) ==> channel == put % channels;
        /*@ assert \at(frame_true(frame), Pre) ==>
                channel_sum(frame, channels, channel, put + 1) == channel_sum(frame, channels, channel, put) + byte; */
        /*@ assert \at(frame_true(frame), Pre) ==> \forall integer c; c != channel ==>
                channel_sum(frame, channels, c, put + 1) == channel_sum(frame, channels, c, put); */
        //@ assert \at(frame_true(frame), Pre) ==> (put + 1) % channels == (left == 1 ? 0 : channel + 1);
        /*@ assert \at(frame_true(frame), Pre) ==> \forall integer c; 0 <= c < channels ==>
                summed(frame, c) == channel_sum(frame, channels, c, put + 1) && summed(frame, c) <= 255 * (put + 1); */
        //@ ghost Summed: ;
        //@ ghost put++;
        //@ assert put == \at(put, Summed) + 1;
        /*@ assert \at(frame_true(frame), Pre) ==> \forall integer c; 0 <= c < channels ==>
                summed(frame, c) == channel_sum(frame, channels, c, put) && summed(frame, c) <= 255 * put; */
        if (--left == 0) {
            left = channels;
            sum = frame->sum;
        }
    }
    //@ ghost Whole: ;
    frame->channel = (uint8_t)(channels - left);
    //@ assert \forall integer c; channel_sum(frame, channels, c, put) == channel_sum{Whole}(frame, channels, c, put);
    //@ assert put == frame->at && channels == frame->channels;
}
