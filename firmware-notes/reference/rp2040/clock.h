/**
 * The clocks, and the time: the processor, PIO and PWM run at 128 MHz from the board's crystal of 12 MHz, USB at 48 MHz.
 */
#ifndef CLOCK_H
#define CLOCK_H

#include <stdbool.h>
#include <stdint.h>

/** Cycles of the processor in a second. The datasheet's most is 133 MHz. */
#define CLOCK_HZ 128000000u

/** Starts the clocks and the timer. Called once, before anything else is used. */
void clock_start(void);

/** Starts an interrupt each millisecond, which ends `sleep`. */
void clock_tick(void);

/** Time in us, modulo 2^32. */
uint32_t clock_us(void);

/** Milliseconds since the start, modulo 2^32. Called at least once an hour. */
uint32_t clock_ms(void);

/** Whether the time `us` has come; it lies less than half an hour away. */
bool clock_reached(uint32_t us);

/** Sleeps until the time `us`, which lies less than half an hour away. Interrupts are on. */
void clock_wait(uint32_t us);

#endif
