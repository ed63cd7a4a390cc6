/**
 * The strip's data pin. Pulse widths are those of the WS2812B datasheet, in whole cycles of 16 MHz (62.5 ns):
 *
 *   0 code   high  6 = 0.375 us (0.4 +- 0.15)    low 14 = 0.875 us (0.85 +- 0.15)
 *   1 code   high 13 = 0.8125 us (0.8 +- 0.15)   low  7 = 0.4375 us (0.45 +- 0.15)
 *
 * Every bit takes 20 cycles, the last of a byte too, so a byte takes 160 cycles, 10 us.
 */
#ifndef STRIP_H
#define STRIP_H

/** Makes the data pin an output and low. The clock has been started. */
void strip_start(void);

#endif
