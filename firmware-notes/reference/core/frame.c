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
