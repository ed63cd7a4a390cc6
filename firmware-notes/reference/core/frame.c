#include "frame.h"

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
}

void frame_open(struct frame *frame)
{
    frame->at = 0;
    frame->channel = 0;
    /*@ loop invariant 0 <= i <= CHANNELS;
        loop assigns i, frame->sum[0 .. CHANNELS - 1];
        loop variant CHANNELS - i;
    */
    for (uint8_t i = 0; i < CHANNELS; i++)
        frame->sum[i] = (struct sum){ 0, 0 };
}

uint16_t frame_room(const struct frame *frame)
{
    return (uint16_t)(frame->length - frame->at);
}

/*@ requires \valid(sum);
    assigns *sum;
*/
static inline void add(struct sum *sum, uint8_t byte)
{
    sum->low = (uint16_t)(sum->low + byte);
    if (sum->low < byte)
        sum->high++;
}

/*
 * Runs for every byte of the strip while the line brings the next, often with a stretch of one or two: what one call costs
 * counts as much as what one byte costs.
 */
void frame_put(struct frame *frame, const uint8_t *bytes, uint8_t count)
{
    uint8_t *to = frame->bytes + frame->at;
    uint8_t channels = frame->channels;
    uint8_t left = (uint8_t)(channels - frame->channel);
    struct sum *sum = &frame->sum[frame->channel];
    frame->at = (uint16_t)(frame->at + count);
    /*@ loop invariant 0 <= count <= \at(count, Pre);
        loop invariant to == frame->bytes + (\at(frame->at, Pre) + (\at(count, Pre) - count));
        loop invariant bytes == \at(bytes, Pre) + (\at(count, Pre) - count);
        loop invariant 1 <= left <= channels;
        loop invariant sum == frame->sum + (channels - left);
        loop assigns count, to, bytes, left, sum, frame->sum[0 .. CHANNELS - 1],
            frame->bytes[\at(frame->at, Pre) .. \at(frame->at, Pre) + \at(count, Pre) - 1];
        loop variant count;
    */
    for (; count > 0; count--) {
        uint8_t byte = *bytes++;
        *to++ = byte;
        add(sum++, byte);
        if (--left == 0) {
            left = channels;
            sum = frame->sum;
        }
    }
    frame->channel = (uint8_t)(channels - left);
}
