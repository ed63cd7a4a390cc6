/**
 * What is wired to which pin of the ATmega328P, at 16 MHz.
 *
 *   line      PD0 (in), PD1 (out)
 *   strip     PD4
 *   dimmers   PD6 PD5 PB1 PB2 PB3 PD3, numbered 0 to 5: OC0A OC0B OC1A OC1B OC2A OC2B
 */
#ifndef PINS_H
#define PINS_H

#define STRIP_PORT PORTD
#define STRIP_DDR DDRD
#define STRIP_BIT 4

#endif
