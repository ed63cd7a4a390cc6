/**
 * The strip's data pin. Pulse widths, in whole cycles of 16 MHz (62.5 ns), are within the datasheets of both usual pixels, the
 * WS2812B's (three channels) and the SK6812's (four):
 *
 *                                   WS2812B           SK6812
 *   0 code   high  5 = 0.3125 us    0.4  +- 0.15 us   0.3 +- 0.15 us
 *            low  15 = 0.9375 us    0.85 +- 0.15 us   0.9 +- 0.15 us
 *   1 code   high 11 = 0.6875 us    0.8  +- 0.15 us   0.6 +- 0.15 us
 *            low   9 = 0.5625 us    0.45 +- 0.15 us   0.6 +- 0.15 us
 *
 * Every bit takes 20 cycles, the last of a byte too, so a byte takes 160 cycles, 10 us.
 */
#ifndef STRIP_H
#define STRIP_H

/** Makes the data pin an output and sets it low. The clock must be running. */
void strip_start(void);

#endif
