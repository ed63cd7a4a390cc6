/**
 * The controller: answers the host's messages and shows its frames (wire.md section 2). One message is answered before the
 * next is read. It neither waits nor allocates; what it needs of a board is in port.h, what a board can do in limits.h.
 */
#ifndef CONTROLLER_H
#define CONTROLLER_H

#include <stdbool.h>
#include <stdint.h>

#include "light.h"
#include "packet.h"
#include "parts.h"

/** Wire version that is spoken. */
#define WIRE_VERSION 1

/** Version of this firmware: major, minor, patch. */
#define FIRMWARE_VERSION { 1, 1, 0 }

/** How long a change of the light waits for a packet under way to end: longer than the longest one takes at 57600 baud. */
#define PATIENCE_MS 250

/** A controller. All zero before controller_start. */
struct controller {
    struct packet_reader reader;
    struct parts parts;
    struct light light;
    uint8_t body[SETUP_MOST]; /* of the message under way, if it is no FRAME; what does not fit is skipped */
    uint32_t now_ms;          /* of the last controller_tick */
    uint8_t last_sequence;    /* of the last good packet */
    bool overrun;             /* the packet under way has been counted as overrun */
    uint16_t broken;          /* packets with a wrong checksum or COBS, modulo 65536 */
    uint16_t overruns;        /* packets of which bytes were lost, modulo 65536 */
    uint16_t dimmed;          /* frames dimmed to keep the ceiling, modulo 65536 */
};

/** Drives everything dark. Called once, before all else; the board need not listen yet. */
void controller_start(struct controller *controller);

/** Says HERE. Called once the board listens. */
void controller_greet(void);

/** Takes `count` bytes of the line, any values. They are overwritten: a body is decoded where it stands. */
void controller_take(struct controller *controller, uint8_t *bytes, uint8_t count);

/**
 * Bytes of the line were lost after those that were taken: the packet they belonged to is broken, whatever follows. That is the
 * packet under way or, where none is, the next.
 */
void controller_overrun(struct controller *controller);

/**
 * Does what is due without a host. Called every few ms; `now_ms` is a clock that may start anywhere and run over. Between two
 * calls time stands still for the controller.
 */
void controller_tick(struct controller *controller, uint32_t now_ms);

#endif
