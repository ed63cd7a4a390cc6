/** The serial line, USART0: 8 data bits, no parity, one stop bit, at BAUD. An interrupt puts incoming bytes into a ring. */
#ifndef UART_H
#define UART_H

#include <stdbool.h>
#include <stdint.h>

/** Starts the line. */
void uart_start(void);

/**
 * The bytes waiting, oldest first: returns how many are contiguous at `*bytes`, perhaps 0. The caller may also overwrite them until
 * uart_drop.
 */
uint8_t uart_waiting(uint8_t **bytes);

/** Drops the oldest `count` of the contiguous waiting bytes. */
void uart_drop(uint8_t count);

/**
 * Whether bytes were lost because the ring or the hardware had no room for them. From then on every byte is lost, so all that wait came
 * before; uart_resume ends this.
 */
bool uart_lost(void);

/** Accepts bytes again after a loss. None may be waiting. */
void uart_resume(void);

#endif
