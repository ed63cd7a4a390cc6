/**
 * What a board provides. The core calls these from controller_start, controller_greet, controller_take and controller_tick
 * only.
 */
#ifndef PORT_H
#define PORT_H

#include <stdint.h>

/** Bytes of the id of a board. */
#define PORT_ID_BYTES 8

/** Sends one byte on the line. Returns when there is room for it, which may take as long as a byte on the line. */
void port_send(uint8_t byte);

/**
 * Drives `length` bytes into the strip, the first byte first, and latches them. `length` is 0 to STORE_BYTES; with 0 nothing
 * is driven. Keeps the strip's reset time before it starts. Returns when the board listens to the line again. The bytes
 * stay valid and unchanged until it returns.
 */
void port_strip(const uint8_t *bytes, uint16_t length);

/** Sets dimmer `index`, 0 to DIMMERS - 1, to `duty`: 0 is steadily off, 65535 is steadily on. */
void port_dimmer(uint8_t index, uint16_t duty);

/** Writes the id of this board, all zero if it has none. */
void port_id(uint8_t id[PORT_ID_BYTES]);

#endif
