/**
 * The dimmers: six outputs of hardware PWM (datasheet 4.5), two on each of the slices 5, 6 and 7. All run at 128 MHz / 32768 =
 * 3906.25 Hz, above the 3 kHz over which IEEE 1789-2015 leaves modulation unrestricted, in 32768 steps.
 *
 * Duty 0 is steadily low and 65535 steadily high. Between, the output is high for the steps that the high bits of the duty
 * tell, so never for longer than was asked.
 *
 * Pulses are spread: the second output of a slice is high at the end of the period where the first is high at its beginning,
 * and the slices run a third of a period apart.
 */
#ifndef DIMMERS_H
#define DIMMERS_H

/** Turns all dimmers off. The clocks run; PWM and pins are out of reset. */
void dimmers_start(void);

#endif
