/**
 * The line to the host, in one of two ways, as the build says: usb.c or uart.c. Bytes in go through an interrupt into a ring.
 */
#ifndef LINE_H
#define LINE_H

#include <stdbool.h>
#include <stdint.h>

#include "port.h"

/** Starts the line. The clocks run. `id` is the board's, all zero if it has none. */
void line_start(const uint8_t id[PORT_ID_BYTES]);

/** Whether the host opened the line since the last call, so that it has to be told who is here. */
bool line_opened(void);

/**
 * Bytes that wait, the oldest first: how many stand together at `*bytes`, perhaps 0. They are the caller's, to write over too,
 * until line_drop.
 */
uint8_t line_waiting(uint8_t **bytes);

/** Drops the oldest `count` bytes of those that wait together. */
void line_drop(uint8_t count);

/** Whether bytes were lost. From then on every byte is lost, so all that wait came before; line_resume ends it. */
bool line_lost(void);

/** Takes bytes again after a loss. None waits. */
void line_resume(void);

#endif
