/**
 * What is wired to which pin of the RP2040.
 *
 *   line       USB; or GP0 (out) and GP1 (in), where the build says UART
 *   strip      GP2 to GP9, data lines 0 to 7
 *   dimmers    GP10 to GP15, numbered 0 to 5
 */
#ifndef PINS_H
#define PINS_H

#define UART_OUT_PIN 0u
#define UART_IN_PIN 1u
#define STRIP_FIRST_PIN 2u
#define DIMMER_FIRST_PIN 10u

#endif
