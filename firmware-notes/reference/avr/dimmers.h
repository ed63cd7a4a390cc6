/**
 * The dimmers: six outputs of hardware PWM (datasheet sections 15 to 18), all fast PWM, all above the 3 kHz over which
 * IEEE 1789-2015 leaves modulation unrestricted.
 *
 *   0 1  PD6 PD5  timer 0, mode 3,  clock / 8 / 256  = 7812.5 Hz,  256 steps
 *   2 3  PB1 PB2  timer 1, mode 14, clock / 4096     = 3906.25 Hz, 4096 steps
 *   4 5  PB3 PD3  timer 2, mode 3,  clock / 8 / 256  = 7812.5 Hz,  256 steps
 *
 * Duty 0 is steadily low and 65535 steadily high. Between, the output is high for the steps that the high bits of the duty
 * tell, so never for longer than was asked.
 *
 * A timer's first output is high from the start of its period and its second up to the end of it, so they are high together only
 * where their duties come to more than 1. Timer 2 runs half a period after timer 0, and timer 1 begins its own a quarter after it.
 */
#ifndef DIMMERS_H
#define DIMMERS_H

/** Turns all dimmers off. The clock must be running: it owns timer 1. */
void dimmers_start(void);

#endif
