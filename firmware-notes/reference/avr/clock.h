/**
 * The clock: timer 1 counts 4096 cycles, 256 us at 16 MHz, and every overflow is a tick. The same timer generates the PWM of dimmers 2 and
 * 3.
 */
#ifndef CLOCK_H
#define CLOCK_H

#include <stdbool.h>
#include <stdint.h>

/** Cycles per tick. */
#define TICK_CYCLES 4096u

/** Starts timer 1 and its interrupt. */
void clock_start(void);

/** Whether a tick has passed since the last call of clock_ms. */
bool clock_ticked(void);

/** Milliseconds since the start, modulo 2^32. Called at least every 16 s. */
uint32_t clock_ms(void);

/** Time in steps of 16 us, modulo 65536. Interrupts may be on or off; off for less than a tick. */
uint16_t clock_16us(void);

/** The clock's state when interrupts go off. Call with interrupts off. */
uint16_t clock_pause(void);

/** Catches up on ticks missed while interrupts were off: `paused` from clock_pause, plus about `cycles`, at most 2^24 - 1. */
void clock_resume(uint16_t paused, uint32_t cycles);

#endif
