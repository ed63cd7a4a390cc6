/**
 * Reads packets from the line a byte at a time (wire.md section 1): COBS, checksum, type and sequence. The body is handed on
 * while it arrives, before its checksum is known; who takes it must undo or hide it when the packet proves broken.
 */
#ifndef PACKET_H
#define PACKET_H

#include <stdbool.h>
#include <stdint.h>

#include "cobs.h"

/** What one byte of the line came to. */
enum packet_event {
    PACKET_NOTHING,  /* nothing to do yet */
    PACKET_BEGUN,    /* the packet is no shorter than one may be: `type` and `sequence` stand */
    PACKET_BODY,     /* one more byte of the body: `byte` */
    PACKET_GOOD,     /* the packet is over and its checksum is right: `type`, `sequence` and `body` stand */
    PACKET_TOO_LONG, /* the same, but it is longer than PACKET_MOST */
    PACKET_BROKEN,   /* the packet is over and its checksum or its COBS is wrong, or it is too short to be one */
};

/** A reader. Made ready by packet_start. Numbers that could run over stay at 65535. */
struct packet_reader {
    uint8_t type;     /* from PACKET_BEGUN on */
    uint8_t sequence; /* likewise */
    uint8_t byte;     /* of PACKET_BODY */
    uint16_t body;    /* at the end of a packet: bytes of its body */
    uint16_t came;    /* at the end of a packet: bytes of the line before its zero */

    struct cobs cobs;
    uint16_t crc;
    uint8_t held[2];  /* the newest two bytes: the checksum if the packet ends now */
    uint8_t early;    /* bytes that came and are no body, 0 to 4 */
    uint16_t silent;  /* bytes of the line that stood for no byte of the packet */
    uint16_t length;  /* bytes of body so far */
    bool spoilt;
};

/** Stands before a packet's first byte. */
void packet_start(struct packet_reader *reader);

/** Takes one byte of the line, any value. */
enum packet_event packet_take(struct packet_reader *reader, uint8_t byte);

/** Whether a packet has begun and not ended. */
bool packet_under_way(const struct packet_reader *reader);

/** Makes the packet under way end as PACKET_BROKEN whatever follows. Without one, the next packet does. */
void packet_spoil(struct packet_reader *reader);

#endif
