#include "frame.h"

#include <string.h>

void frame_clear(struct frame *frame, uint16_t length, uint8_t channels)
{
    memset(frame, 0, sizeof *frame);
    frame->length = length;
    frame->channels = channels;
}

void frame_open(struct frame *frame)
{
    frame->at = 0;
    frame->channel = 0;
    memset(frame->sum, 0, sizeof frame->sum);
}

uint16_t frame_room(const struct frame *frame)
{
    return (uint16_t)(frame->length - frame->at);
}

/* The sum of every `step`-th of `count` bytes, 1 to 255, so it fits. */
static uint16_t sum_every(const uint8_t *bytes, uint8_t count, uint8_t step)
{
    uint16_t sum = *bytes;
    for (; count > step; count = (uint8_t)(count - step)) {
        bytes += step;
        sum = (uint16_t)(sum + *bytes);
    }
    return sum;
}

/* The channel `steps` on, found without dividing: a short stretch takes few turns. */
static uint8_t channel_after(const struct frame *frame, uint8_t steps)
{
    uint8_t channels = frame->channels;
    while (steps >= channels)
        steps = (uint8_t)(steps - channels);
    uint8_t channel = (uint8_t)(frame->channel + steps);
    return channel < channels ? channel : (uint8_t)(channel - channels);
}

/*
 * Runs for every byte of the strip while the line brings the next: short loops over one stretch, a channel at a time, take
 * fewest cycles.
 */
void frame_put(struct frame *frame, const uint8_t *bytes, uint8_t count)
{
    memcpy(frame->bytes + frame->at, bytes, count);
    frame->at = (uint16_t)(frame->at + count);
    for (uint8_t i = 0; i < frame->channels && i < count; i++)
        frame->sum[channel_after(frame, i)] += sum_every(bytes + i, (uint8_t)(count - i), frame->channels);
    frame->channel = channel_after(frame, count);
}
