/**
 * Reads packets from the line (wire.md section 1): COBS, checksum, type and sequence. The body is passed on while it arrives, before its
 * checksum is known; the receiver must undo or hide it if the packet turns out to be broken.
 */
#ifndef PACKET_H
#define PACKET_H

#include <stdbool.h>
#include <stdint.h>

#include "cobs.h"
#include "crc.h"

/** What bytes from the line produced. */
enum packet_event {
    PACKET_NOTHING,  /* nothing, except perhaps more of the body */
    PACKET_BEGUN,    /* the packet has reached the minimum length: `type` and `sequence` are valid */
    PACKET_GOOD,     /* the packet is over and its checksum is right: `type`, `sequence` and `length` are valid */
    PACKET_TOO_LONG, /* the same, but it is longer than PACKET_MOST */
    PACKET_BROKEN,   /* the packet is over and its checksum or its COBS is wrong, or it is too short to be one */
};

/** A reader. Initialised by packet_start. Numbers that could overflow stay at 65535. */
struct packet_reader {
    uint8_t type;     /* from PACKET_BEGUN on */
    uint8_t sequence; /* likewise */
    uint16_t length;  /* bytes of body so far; at the end of a packet, all of them */
    uint16_t came;    /* bytes of the line so far; at the end of a packet, all before its zero */

    struct cobs cobs;
    struct crc crc;   /* of type, sequence and `length` bytes of body */
    uint8_t held[2];  /* the newest two bytes: the checksum if the packet ends now */
    uint8_t early;    /* bytes received outside the body, 0 to 4 */
    bool over;        /* the packet has ended: the next byte begins another */
    bool spoilt;      /* bytes of the packet were lost */
};

/** What packet_take did. */
struct packet_step {
    uint8_t used;  /* bytes from the line that were used */
    uint8_t body;  /* bytes of body that they produced, at most `used`; they came before the event */
    uint8_t event; /* enum packet_event */
};

/** Gets ready for a packet's first byte. */
/*@ requires \valid(reader);
    assigns *reader;
*/
void packet_start(struct packet_reader *reader);

/**
 * Processes bytes from the line, any values, until one produces an event or all `count`, 1 or more, are used. The resulting body replaces
 * the bytes used, from bytes[0] on.
 */
/*@ requires count >= 1 && \valid(reader) && \valid(bytes + (0 .. count - 1));
    requires \separated(reader, bytes + (0 .. count - 1));
    assigns *reader, bytes[0 .. count - 1];
    ensures 1 <= \result.used <= count && \result.body <= \result.used;
*/
struct packet_step packet_take(struct packet_reader *reader, uint8_t *bytes, uint8_t count);

/** Whether a packet has begun and not ended. */
/*@ requires \valid_read(reader);
    assigns \nothing;
*/
bool packet_under_way(const struct packet_reader *reader);

/**
 * Bytes from the line were lost just now: the packet in progress or, if there is none, the one that they began ends as PACKET_BROKEN
 * whatever follows, even if nothing follows before its zero.
 */
/*@ requires \valid(reader);
    assigns *reader;
*/
void packet_spoil(struct packet_reader *reader);

#endif
