/**
 * Assembles a frame from its parts (wire.md section 3, FRAME), directly in the store while bytes arrive. Nothing of it may be shown before
 * parts_end has returned PART_LAST.
 */
#ifndef PARTS_H
#define PARTS_H

#include <stdbool.h>
#include <stdint.h>

#include "complaint.h"
#include "frame.h"

/** Maximum number of bytes before the strip's: offset, flags, duties. */
#define PART_HEAD_MOST (3 + 2 * DIMMERS)

/** Where in a part the next byte belongs. */
enum part_state {
    PART_HEAD,    /* offset, flags, duties */
    PART_DATA,    /* bytes of the strip */
    PART_SURPLUS, /* bytes past the end of the frame came */
    PART_REFUSED, /* nothing of this part is stored */
};

/** A frame being assembled. All zero, none has begun. */
struct parts {
    uint16_t next;  /* offset at which the next part must start; 0 if only a new frame may begin */
    uint16_t due;   /* value of `next` when the current part began */
    uint16_t start; /* offset of the current part */
    uint8_t state;  /* enum part_state */
    uint8_t flags;
    uint8_t head[PART_HEAD_MOST];
    uint8_t head_at;
    uint8_t head_length;
};

/*@ predicate parts_good(struct parts *parts) =
        parts->head_length <= PART_HEAD_MOST && parts->state <= PART_REFUSED
        && (parts->state == PART_HEAD ==> parts->head_at < parts->head_length && parts->head_length >= 3
            && (parts->head_at < 3 ==> parts->head_length == 3));
    // What came before, or is going in, belongs to one frame, with its sums.
    predicate parts_true(struct parts *parts, struct frame *frame) =
        (parts->state == PART_HEAD ==> parts->start == 0 || parts->start == parts->due)
        && (parts->state == PART_DATA || parts->next != 0 || (parts->state == PART_HEAD && parts->due != 0) ==> frame_true(frame));
*/

/** How a part ended. */
enum part_end {
    PART_WRONG, /* see the complaint */
    PART_TAKEN, /* more parts are to come */
    PART_LAST,  /* the frame is whole */
};

/** Discards what was received so far: the next part must begin a frame. The current part, if any, is refused. */
/*@ requires \valid(parts) && parts->head_length <= PART_HEAD_MOST;
    assigns parts->next, parts->due, parts->state;
    ensures parts_good(parts) && parts->state == PART_REFUSED && parts->next == 0;
*/
void parts_forget(struct parts *parts);

/** A FRAME's body begins. Until it has ended successfully, the frame is meaningless. */
/*@ requires \valid(parts);
    assigns *parts;
    ensures parts_good(parts) && parts->state == PART_HEAD;
    ensures parts->next == 0 && parts->due == \old(parts->next) && parts->start == parts->due;
*/
void parts_begin(struct parts *parts);

/**
 * Processes the next `count` bytes of the body. `frame` has its size; `dimmers` are in use, 0 to DIMMERS; both stay the same for a whole
 * part.
 */
/*@ requires \valid(parts) && parts_good(parts) && \valid(frame) && frame_open_to(frame) && dimmers <= DIMMERS;
    requires \valid_read(bytes + (0 .. count - 1));
    requires \separated(parts, frame) && \separated(parts, bytes + (0 .. count - 1)) && \separated(frame, bytes + (0 .. count - 1));
    assigns *parts, frame->bytes[0 .. STORE_BYTES - 1], frame->duty[0 .. DIMMERS - 1], frame->at, frame->channel,
        frame->sum[0 .. CHANNELS - 1];
    ensures parts_good(parts) && frame_open_to(frame) && frame->length == \old(frame->length);
    ensures \old(parts_true(parts, frame)) ==> parts_true(parts, frame);
*/
void parts_take(struct parts *parts, struct frame *frame, uint8_t dimmers, const uint8_t *bytes, uint8_t count);

/** The body is over and its checksum is right. On PART_WRONG, writes the complaint: length, value or order. */
/*@ requires \valid(parts) && parts_good(parts) && \valid_read(frame) && frame_open_to(frame) && \valid(wrong);
    requires \separated(parts, frame, wrong);
    assigns parts->next, *wrong;
    ensures parts_good(parts);
    ensures \old(parts_true(parts, frame)) ==> parts_true(parts, frame);
    ensures \result == PART_LAST ==> frame->at == frame->length;
    ensures \result == PART_LAST && \old(parts_true(parts, frame)) ==> frame_true(frame);
*/
enum part_end parts_end(struct parts *parts, const struct frame *frame, struct complaint *wrong);

#endif
