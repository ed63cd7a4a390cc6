/**
 * The serial line, USART0: 8 data bits, no parity, one stop bit, at BAUD. Bytes in go through an interrupt into a ring.
 */
#ifndef UART_H
#define UART_H

#include <stdbool.h>
#include <stdint.h>

/** Starts the line. */
void uart_start(void);

/**
 * Bytes that wait, the oldest first: how many stand together at `*bytes`, perhaps 0. They are the caller's, to write over too,
 * until uart_drop.
 */
uint8_t uart_waiting(uint8_t **bytes);

/** Drops the oldest `count` bytes of those that wait together. */
void uart_drop(uint8_t count);

/**
 * Whether bytes were lost because the ring or the hardware had no room for them. From then on every byte is lost, so all that wait
 * came before; uart_resume ends it.
 */
bool uart_lost(void);

/** Takes bytes again after a loss. None waits. */
void uart_resume(void);

#endif
