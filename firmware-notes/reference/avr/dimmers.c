#include "dimmers.h"

#include <avr/io.h>
#include <stdbool.h>
#include <stdint.h>

#include "clock.h"
#include "port.h"

/*
 * One output: its pin, and its timer's control register with the bits that connect the pin. A late one is connected inverted (COM
 * bits 3): low from the start of the period to the compare match, then high.
 */
struct output {
    volatile uint8_t *port;
    uint8_t pin;
    volatile uint8_t *control;
    uint8_t connect;
    bool late;
};

/* The timers' positions in their periods at the start: see dimmers.h. */
#define TIMER_2_HALF 128
#define TIMER_1_QUARTER (TICK_CYCLES - 256 * 8 / 4)

void dimmers_start(void)
{
    DDRD |= _BV(PD6) | _BV(PD5) | _BV(PD3);
    DDRB |= _BV(PB1) | _BV(PB2) | _BV(PB3);
    TCCR0A = _BV(WGM01) | _BV(WGM00);
    TCNT1 = TIMER_1_QUARTER;
    TCNT0 = 0;
    TCCR0B = _BV(CS01);
    TCCR2A = _BV(WGM21) | _BV(WGM20);
    TCNT2 = TIMER_2_HALF;
    TCCR2B = _BV(CS21);
}

/* The functions on an output are inlined with its constants, so that it takes few instructions and no table in RAM. */

__attribute__((always_inline)) static inline void hold(struct output output, bool high)
{
    if (high)
        *output.port |= output.pin;
    else
        *output.port &= (uint8_t)~output.pin;
    *output.control &= (uint8_t)~output.connect;
}

/*
 * An early output is high for one step more than its compare register says, a late one for the rest of the period. A held one leaves the
 * least there, because the new value takes effect only from the next period on.
 */

__attribute__((always_inline)) static inline void modulate_8(struct output output, volatile uint8_t *compare, uint16_t duty)
{
    uint8_t steps = duty >> 8;
    if (duty == UINT16_MAX || steps == 0) {
        *compare = output.late ? UINT8_MAX : 0;
        hold(output, steps != 0);
        return;
    }
    *compare = (uint8_t)(output.late ? UINT8_MAX - steps : steps - 1);
    *output.control |= output.connect;
}

__attribute__((always_inline)) static inline void modulate_12(struct output output, volatile uint16_t *compare, uint16_t duty)
{
    uint16_t steps = duty >> 4;
    if (duty == UINT16_MAX || steps == 0) {
        *compare = output.late ? TICK_CYCLES - 1 : 0;
        hold(output, steps != 0);
        return;
    }
    *compare = (uint16_t)(output.late ? TICK_CYCLES - 1 - steps : steps - 1);
    *output.control |= output.connect;
}

void port_dimmer(uint8_t index, uint16_t duty)
{
    switch (index) {
    case 0:
        modulate_8((struct output){ &PORTD, _BV(PD6), &TCCR0A, _BV(COM0A1), false }, &OCR0A, duty);
        break;
    case 1:
        modulate_8((struct output){ &PORTD, _BV(PD5), &TCCR0A, _BV(COM0B1) | _BV(COM0B0), true }, &OCR0B, duty);
        break;
    case 2:
        modulate_12((struct output){ &PORTB, _BV(PB1), &TCCR1A, _BV(COM1A1), false }, &OCR1A, duty);
        break;
    case 3:
        modulate_12((struct output){ &PORTB, _BV(PB2), &TCCR1A, _BV(COM1B1) | _BV(COM1B0), true }, &OCR1B, duty);
        break;
    case 4:
        modulate_8((struct output){ &PORTB, _BV(PB3), &TCCR2A, _BV(COM2A1), false }, &OCR2A, duty);
        break;
    default:
        modulate_8((struct output){ &PORTD, _BV(PD3), &TCCR2A, _BV(COM2B1) | _BV(COM2B0), true }, &OCR2B, duty);
        break;
    }
}
