/**
 * The serial line, USART0: 8 data bits, no parity, one stop bit, at BAUD. Bytes in go through an interrupt into a ring.
 */
#ifndef UART_H
#define UART_H

#include <stdbool.h>
#include <stdint.h>

/** Starts the line. */
void uart_start(void);

/** Takes the oldest byte that came. Answers false, and leaves `*byte`, where none waits. */
bool uart_take(uint8_t *byte);

/** Whether bytes were lost since the last call, because the ring or the hardware had no room for them. */
bool uart_overran(void);

#endif
