/**
 * What a board provides. The core calls these from controller_start, controller_greet, controller_take and controller_tick only. Their
 * contracts say what they receive, and that they change nothing of the core's.
 */
#ifndef PORT_H
#define PORT_H

#include <stdbool.h>
#include <stdint.h>

#include "limits.h"

/** Length of a board's id in bytes. */
#define PORT_ID_BYTES 8

/** Sends one byte on the line. Returns when there is room for it, which may take as long as a byte on the line. */
/*@ assigns \nothing; */
void port_send(uint8_t byte);

/**
 * Drives `length` bytes into the strip, the first byte first, and latches them. `length` is 0 to STORE_BYTES; with 0 nothing is driven.
 * Called only if port_latched has returned true since the last call, so the reset time is observed. Returns when the board listens to the
 * line again. The bytes stay valid and unchanged until it returns.
 */
/*@ requires length <= STORE_BYTES && \valid_read(bytes + (0 .. length - 1));
    assigns \nothing;
*/
void port_strip(const uint8_t *bytes, uint16_t length);

/** One run of the strip: `bytes` that go out on a data line. */
struct port_run {
    uint8_t output; /* number of the data line, 0 to OUTPUTS - 1; no two runs share one */
    uint16_t bytes; /* 0 to STORE_BYTES */
};

/**
 * Sets how the data for port_strip is split from now on: the first run's bytes come first. Data lines that have less than before, or
 * nothing any more, are driven dark there once, with the next port_strip. If `count` is 0, everything goes out on data line 0, and before
 * the first call the strip is dark on every line. All lines latch together (wire.md section 4). Called only if OUTPUTS is more than 1.
 */
/*@ requires count <= OUTPUTS && \valid_read(runs + (0 .. count - 1));
    requires \forall integer i; 0 <= i < count ==> runs[i].output < OUTPUTS;
    assigns \nothing;
*/
void port_cut(const struct port_run *runs, uint8_t count);

/**
 * Whether the strip shows what port_strip drove last: all of it has gone out and the reset time is over. Cheap once it has returned true:
 * it is called at every controller_tick.
 */
/*@ assigns \nothing; */
bool port_latched(void);

/** Sets dimmer `index`, 0 to DIMMERS - 1, to `duty`: 0 is steadily off, 65535 is steadily on. */
/*@ requires index < DIMMERS;
    assigns \nothing;
*/
void port_dimmer(uint8_t index, uint16_t duty);

/** Writes this board's id, all zero if it has none. */
/*@ requires \valid(id + (0 .. PORT_ID_BYTES - 1));
    assigns id[0 .. PORT_ID_BYTES - 1];
*/
void port_id(uint8_t id[PORT_ID_BYTES]);

/** Why a board starts (wire.md section 3, HERE). */
enum port_reset {
    PORT_RESET_UNKNOWN = 0,
    PORT_RESET_POWER = 1,
    PORT_RESET_BUTTON = 2,
    PORT_RESET_BROWN_OUT = 3,
    PORT_RESET_WATCHDOG = 4,
};

/** Why this board last started. */
/*@ assigns \nothing;
    ensures PORT_RESET_UNKNOWN <= \result <= PORT_RESET_WATCHDOG;
*/
enum port_reset port_last_reset(void);

#endif
