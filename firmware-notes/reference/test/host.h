/**
 * The host's side of the wire, written independently of the core so that each checks the other: COBS over a whole packet as the paper
 * describes it, the checksum bit by bit.
 */
#ifndef HOST_H
#define HOST_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "bench.h"

/** Maximum length of a packet on the line, with its zero. */
#define HOST_WIRE_MOST 2048

/** A packet that was read or is to be written. */
struct packet {
    uint8_t type;
    uint8_t sequence;
    uint8_t body[HOST_WIRE_MOST];
    size_t length;
};

/** The checksum of bytes. */
uint16_t host_crc(const uint8_t *bytes, size_t count);

/** COBS of bytes, without the terminating zero. Returns its length. */
size_t host_encode(uint8_t *wire, const uint8_t *bytes, size_t count);

/** Decodes COBS of `count` bytes without their terminating zero. Returns the length, or -1 if they are not valid. */
long host_decode(uint8_t *bytes, const uint8_t *wire, size_t count);

/** A packet on the line, with its zero. Returns its length. */
size_t host_write(uint8_t *wire, uint8_t type, uint8_t sequence, const uint8_t *body, size_t length);

/** Sends a packet to the bench. */
void host_send(uint8_t type, uint8_t sequence, const uint8_t *body, size_t length);

/** Takes the oldest packet that the bench sent. Returns false if there is none. A broken one fails a check. */
bool host_receive(struct packet *packet);

/**
 * Sends a packet, takes its answer and lets the strip latch; fails a check unless there is exactly one, of `type` and the same sequence.
 */
struct packet host_ask(uint8_t type, uint8_t sequence, const uint8_t *body, size_t length, uint8_t answer);

/** The same, where a COMPLAINT is expected: returns its code, and writes its detail. */
uint8_t host_complaint(uint8_t type, uint8_t sequence, const uint8_t *body, size_t length, uint16_t *detail);

/** The number of two bytes at `bytes`, high byte first. */
uint16_t host_number(const uint8_t *bytes);

/** A set-up's body under construction. */
struct body {
    uint8_t bytes[HOST_WIRE_MOST];
    size_t length;
};

/** Appends a byte, or a two-byte number with the high byte first. */
void body_byte(struct body *body, uint8_t byte);
void body_number(struct body *body, uint16_t number);

/** The set-up of wire.md's worked examples: two pixels in GRB order, 12 mA per channel, 1 mA dark, 1500 mA, 3 s, beacon. */
struct body host_setup_small(void);

/** The same for `pixels`, `ceiling_mA`, and what to show afterwards. */
struct body host_setup_of(uint16_t pixels, uint16_t ceiling_mA, uint8_t after);

/** A FRAME's body: a part at `offset`, with duties only where `offset` is 0. */
struct body host_frame(uint16_t offset, bool last, const uint16_t *duties, uint8_t dimmers, const uint8_t *bytes,
                       size_t count);

#endif
