/**
 * The clocks, and the time: the processor, PIO and PWM run at 128 MHz from the board's crystal of 12 MHz, USB at 48 MHz.
 */
#ifndef CLOCK_H
#define CLOCK_H

#include <stdbool.h>
#include <stdint.h>

/** Processor cycles per second. The datasheet's maximum is 133 MHz. */
#define CLOCK_HZ 128000000u

/** Starts the clocks and the timer. Call once, before using anything else. */
void clock_start(void);

/** Starts an interrupt every millisecond, which ends `sleep`. */
void clock_tick(void);

/** Time in us, modulo 2^32. */
uint32_t clock_us(void);

/** Milliseconds since the start, modulo 2^32. Call at least once an hour. */
uint32_t clock_ms(void);

/** Whether the time `us` has come; it must be less than half an hour away. */
bool clock_reached(uint32_t us);

/** Sleeps until the time `us`, which must be less than half an hour away. Interrupts must be on. */
void clock_wait(uint32_t us);

#endif
