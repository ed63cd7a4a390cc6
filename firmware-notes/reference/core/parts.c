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

/*@ requires \valid_read(parts);
    assigns \nothing;
    ensures \result ==> parts->start == 0 || parts->start == parts->due;
*/
static bool head_good(const struct parts *parts)
{
    return parts->flags <= FLAG_LAST && (parts->start == 0 || parts->start == parts->due);
}

/* The offset and the flags are known. They determine whether duties follow. */
/*@ requires \valid(parts) && dimmers <= DIMMERS && parts->state == PART_HEAD && parts->head_length == 3;
    assigns parts->start, parts->flags, parts->state, parts->head_length;
    ensures parts->state == PART_HEAD || parts->state == PART_REFUSED;
    ensures parts->head_length == 3 || parts->head_length == 3 + 2 * dimmers;
    ensures parts->start != 0 ==> parts->head_length == 3;
    ensures parts->state == PART_HEAD ==> parts->start == 0 || parts->start == parts->due;
*/
static void read_fixed(struct parts *parts, uint8_t dimmers)
{
    parts->start = number_read(parts->head + AT_OFFSET);
    parts->flags = parts->head[AT_FLAGS];
    if (!head_good(parts))
        parts->state = PART_REFUSED;
    else if (parts->start == 0)
        parts->head_length = (uint8_t)(AT_DUTIES + 2 * dimmers);
}

/*@ requires \valid_read(parts) && \valid(frame) && frame_open_to(frame) && \separated(parts, frame);
    requires 3 <= parts->head_length <= PART_HEAD_MOST;
    assigns frame->duty[0 .. DIMMERS - 1], frame->at, frame->channel, frame->sum[0 .. CHANNELS - 1];
    ensures frame_open_to(frame) && frame->at == 0 && frame_true(frame);
*/
static void open_frame(const struct parts *parts, struct frame *frame)
{
    /*@ loop invariant 0 <= i <= DIMMERS && at == AT_DUTIES + 2 * i;
        loop assigns at, i, frame->duty[0 .. DIMMERS - 1];
        loop variant 256 - at;
    */
    for (uint8_t at = AT_DUTIES, i = 0; at < parts->head_length; at += 2, i++)
        frame->duty[i] = number_read(parts->head + at);
    frame_open(frame);
}

/*@ requires \valid(parts) && parts_good(parts) && parts->state == PART_HEAD && dimmers <= DIMMERS;
    requires \valid(frame) && frame_open_to(frame) && \separated(parts, frame);
    assigns *parts, frame->duty[0 .. DIMMERS - 1], frame->at, frame->channel, frame->sum[0 .. CHANNELS - 1];
    ensures parts_good(parts) && frame_open_to(frame);
    ensures \old(parts_true(parts, frame)) ==> parts_true(parts, frame);
*/
static void take_head(struct parts *parts, struct frame *frame, uint8_t dimmers, uint8_t byte)
{
    uint8_t at = parts->head_at;
    parts->head[at] = byte;
    parts->head_at = (uint8_t)(at + 1);
    if (parts->head_at == AT_DUTIES)
        read_fixed(parts, dimmers);
    //@ assert same_frame{Pre, Here}(frame);
    //@ assert frame_true{Pre}(frame) ==> frame_true(frame);
    if (parts->state != PART_HEAD || parts->head_at < parts->head_length)
        return;
    if (parts->start == 0)
        open_frame(parts, frame);
    //@ ghost Opened: ;
    parts->state = PART_DATA;
    //@ assert same_frame{Opened, Here}(frame);
    //@ assert frame_true{Opened}(frame) ==> frame_true(frame);
}

/*@ requires \valid(parts) && parts_good(parts) && parts->state == PART_DATA && \valid(frame) && frame_open_to(frame);
    requires \valid_read(bytes + (0 .. count - 1));
    requires \separated(parts, frame) && \separated(parts, bytes + (0 .. count - 1)) && \separated(frame, bytes + (0 .. count - 1));
    assigns parts->state, frame->bytes[0 .. STORE_BYTES - 1], frame->at, frame->channel, frame->sum[0 .. CHANNELS - 1];
    ensures parts_good(parts) && frame_open_to(frame) && frame->length == \old(frame->length);
    ensures \old(parts_true(parts, frame)) ==> parts_true(parts, frame);
*/
static void take_data(struct parts *parts, struct frame *frame, const uint8_t *bytes, uint8_t count)
{
    if (count > frame_room(frame))
        parts->state = PART_SURPLUS;
    else
        frame_put(frame, bytes, count);
}

void parts_take(struct parts *parts, struct frame *frame, uint8_t dimmers, const uint8_t *bytes, uint8_t count)
{
    /*@ loop invariant 0 <= count <= \at(count, Pre) && bytes == \at(bytes, Pre) + (\at(count, Pre) - count);
        loop invariant parts_good(parts) && frame_open_to(frame) && frame->length == \at(frame->length, Pre);
        loop invariant \at(parts_true(parts, frame), Pre) ==> parts_true(parts, frame);
        loop assigns count, bytes, *parts, frame->duty[0 .. DIMMERS - 1], frame->at, frame->channel, frame->sum[0 .. CHANNELS - 1];
        loop variant count;
    */
    for (; parts->state == PART_HEAD && count > 0; count--)
        take_head(parts, frame, dimmers, *bytes++);
    if (parts->state == PART_DATA)
        take_data(parts, frame, bytes, count);
}

/*@ requires \valid_read(parts);
    assigns \nothing;
*/
static struct complaint refusal(const struct parts *parts)
{
    if (parts->flags > FLAG_LAST)
        return complain(COMPLAINT_VALUE, AT_FLAGS);
    return complain(COMPLAINT_ORDER, parts->due);
}

/*@ requires \valid_read(parts) && \valid_read(frame) && frame_open_to(frame);
    assigns \nothing;
    ensures \result ==> parts->state == PART_DATA;
    ensures \result && parts->flags == FLAG_LAST ==> frame->at == frame->length;
*/
static bool length_good(const struct parts *parts, const struct frame *frame)
{
    bool last = parts->flags == FLAG_LAST;
    return parts->state == PART_DATA && (!last || frame_room(frame) == 0);
}

enum part_end parts_end(struct parts *parts, const struct frame *frame, struct complaint *wrong)
{
    if (parts->state == PART_REFUSED) {
        *wrong = refusal(parts);
        //@ assert same_frame{Pre, Here}(frame);
        return PART_WRONG;
    }
    if (!length_good(parts, frame)) {
        *wrong = complain(COMPLAINT_LENGTH, (uint16_t)(frame->length - parts->start));
        //@ assert same_frame{Pre, Here}(frame);
        return PART_WRONG;
    }
    if (parts->flags == FLAG_LAST)
        return PART_LAST;
    parts->next = frame->at;
    //@ assert same_frame{Pre, Here}(frame);
    return PART_TAKEN;
}
