/**
 * The strip's data lines: eight, each driven by a state machine of PIO that a channel of DMA feeds from the line's own buffer.
 * So the strip is driven while the processor does other things. At 16 MHz, by which both usual pixels' datasheets are met:
 *
 *   0 code   high  5 = 0.3125 us   low 15 = 0.9375 us
 *   1 code   high 11 = 0.6875 us   low  9 = 0.5625 us
 *
 *   WS2812B      0: 0.4 and 0.85 us   1: 0.8 and 0.45 us   each +- 0.15
 *   SK6812RGBW   0: 0.3 and 0.9 us    1: 0.6 and 0.6 us    each +- 0.15
 */
#ifndef STRIP_H
#define STRIP_H

/** Makes all data lines outputs and sets them low. The clocks run; PIO, DMA and pins are out of reset. */
void strip_start(void);

/** Waits until what was driven last has latched. Interrupts must be on. */
void strip_wait(void);

#endif
