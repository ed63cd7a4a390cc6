/** The line to the host, in one of two ways, chosen at build time: usb.c or uart.c. An interrupt puts incoming bytes into a ring. */
#ifndef LINE_H
#define LINE_H

#include <stdbool.h>
#include <stdint.h>

#include "port.h"

/** Starts the line. The clocks must run. `id` is the board's, all zero if it has none. */
void line_start(const uint8_t id[PORT_ID_BYTES]);

/** Whether the host has opened the line since the last call, so that it must be greeted. */
bool line_opened(void);

/**
 * The bytes waiting, oldest first: returns how many are contiguous at `*bytes`, perhaps 0. The caller may also overwrite them until
 * line_drop.
 */
uint8_t line_waiting(uint8_t **bytes);

/** Drops the oldest `count` of the contiguous waiting bytes. */
void line_drop(uint8_t count);

/** Whether bytes were lost. From then on every byte is lost, so all that wait came before; line_resume ends this. */
bool line_lost(void);

/** Accepts bytes again after a loss. None may be waiting. */
void line_resume(void);

#endif
