#include "parts.h"

#include "number.h"

/* Offsets in the body. */
enum {
    AT_OFFSET = 0,
    AT_FLAGS = 2,
    AT_DUTIES = 3,
};

#define FLAG_LAST 1

void parts_forget(struct parts *parts)
{
    parts->next = 0;
    parts->due = 0;
    parts->state = PART_REFUSED;
}

void parts_begin(struct parts *parts)
{
    parts->due = parts->next;
    parts->next = 0;
    parts->state = PART_HEAD;
    parts->start = parts->due;
    parts->flags = 0;
    parts->head_at = 0;
    parts->head_length = AT_DUTIES;
}

static bool head_good(const struct parts *parts)
{
    return parts->flags <= FLAG_LAST && (parts->start == 0 || parts->start == parts->due);
}

/* The offset and the flags are there. They tell whether duties follow. */
static void read_fixed(struct parts *parts, uint8_t dimmers)
{
    parts->start = number_read(parts->head + AT_OFFSET);
    parts->flags = parts->head[AT_FLAGS];
    if (!head_good(parts))
        parts->state = PART_REFUSED;
    else if (parts->start == 0)
        parts->head_length = (uint8_t)(AT_DUTIES + 2 * dimmers);
}

static void open_frame(const struct parts *parts, struct frame *frame)
{
    for (uint8_t at = AT_DUTIES, i = 0; at < parts->head_length; at += 2, i++)
        frame->duty[i] = number_read(parts->head + at);
    frame_open(frame);
}

static void take_head(struct parts *parts, struct frame *frame, uint8_t dimmers, uint8_t byte)
{
    parts->head[parts->head_at++] = byte;
    if (parts->head_at == AT_DUTIES)
        read_fixed(parts, dimmers);
    if (parts->state != PART_HEAD || parts->head_at < parts->head_length)
        return;
    if (parts->start == 0)
        open_frame(parts, frame);
    parts->state = PART_DATA;
}

static void take_data(struct parts *parts, struct frame *frame, const uint8_t *bytes, uint8_t count)
{
    if (count > frame_room(frame))
        parts->state = PART_SURPLUS;
    else
        frame_put(frame, bytes, count);
}

void parts_take(struct parts *parts, struct frame *frame, uint8_t dimmers, const uint8_t *bytes, uint8_t count)
{
    for (; parts->state == PART_HEAD && count > 0; count--)
        take_head(parts, frame, dimmers, *bytes++);
    if (parts->state == PART_DATA)
        take_data(parts, frame, bytes, count);
}

static struct complaint refusal(const struct parts *parts)
{
    if (parts->flags > FLAG_LAST)
        return complain(COMPLAINT_VALUE, AT_FLAGS);
    return complain(COMPLAINT_ORDER, parts->due);
}

static bool length_good(const struct parts *parts, const struct frame *frame)
{
    bool last = parts->flags == FLAG_LAST;
    return parts->state == PART_DATA && (!last || frame_room(frame) == 0);
}

enum part_end parts_end(struct parts *parts, const struct frame *frame, struct complaint *wrong)
{
    if (parts->state == PART_REFUSED) {
        *wrong = refusal(parts);
        return PART_WRONG;
    }
    if (!length_good(parts, frame)) {
        *wrong = complain(COMPLAINT_LENGTH, (uint16_t)(frame->length - parts->start));
        return PART_WRONG;
    }
    if (parts->flags == FLAG_LAST)
        return PART_LAST;
    parts->next = frame->at;
    return PART_TAKEN;
}
