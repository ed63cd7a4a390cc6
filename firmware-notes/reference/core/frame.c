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

bool frame_full(const struct frame *frame)
{
    return frame->at == frame->length;
}

void frame_put(struct frame *frame, uint8_t byte)
{
    frame->bytes[frame->at++] = byte;
    frame->sum[frame->channel] += byte;
    if (++frame->channel == frame->channels)
        frame->channel = 0;
}
