/**
 * The controller: answers the host's messages and shows its frames (wire.md section 2). One message is answered before the next is read.
 * The code neither waits nor allocates; port.h lists what it needs from a board, limits.h what a board can do.
 */
#ifndef CONTROLLER_H
#define CONTROLLER_H

#include <stdbool.h>
#include <stdint.h>

#include "light.h"
#include "packet.h"
#include "parts.h"

/** The supported wire version. */
#define WIRE_VERSION 1

/** Version of this firmware: major, minor, patch. */
#define FIRMWARE_VERSION { 1, 1, 0 }

/** How long a change of the light waits for a packet in progress to end: longer than the longest one takes at 57600 baud. */
#define PATIENCE_MS 250

/** A controller. All zero before controller_start. */
struct controller {
    struct packet_reader reader;
    struct parts parts;
    struct light light;
    uint8_t body[SETUP_MOST]; /* of the message in progress, if it is not a FRAME; what does not fit is skipped */
    uint32_t now_ms;          /* of the last controller_tick */
    uint8_t last_sequence;    /* of the last good packet */
    bool overrun;             /* the packet in progress has been counted as overrun */
    uint16_t broken;          /* packets with a wrong checksum or COBS, modulo 65536 */
    uint16_t overruns;        /* packets that lost bytes, modulo 65536 */
    uint16_t dimmed;          /* frames dimmed to stay within the ceiling, modulo 65536 */
};

/** Drives everything dark. Call once, before anything else; the board need not listen yet. */
void controller_start(struct controller *controller);

/** Sends HERE. Call once the board listens. */
void controller_greet(void);

/** Processes `count` bytes from the line, any values. They are overwritten: a body is decoded in place. */
void controller_take(struct controller *controller, uint8_t *bytes, uint8_t count);

/**
 * Bytes from the line were lost after those processed so far: the packet that they belonged to is broken, whatever follows. That is the
 * packet in progress or, if there is none, the next.
 */
void controller_overrun(struct controller *controller);

/**
 * Does what is due without a host. Call every few ms; `now_ms` is a clock that may start anywhere and wrap around. Between two calls, time
 * stands still for the controller.
 */
void controller_tick(struct controller *controller, uint32_t now_ms);

#endif
