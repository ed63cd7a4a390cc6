#include "dimmers.h"

#include <avr/io.h>
#include <stdbool.h>
#include <stdint.h>

#include "port.h"

/* One output: its pin, and its timer's control register with the bit that connects the pin. */
struct output {
    volatile uint8_t *port;
    uint8_t pin;
    volatile uint8_t *control;
    uint8_t connect;
};

void dimmers_start(void)
{
    DDRD |= _BV(PD6) | _BV(PD5) | _BV(PD3);
    DDRB |= _BV(PB1) | _BV(PB2) | _BV(PB3);
    TCCR0A = _BV(WGM01) | _BV(WGM00);
    TCCR0B = _BV(CS01);
    TCCR2A = _BV(WGM21) | _BV(WGM20);
    TCCR2B = _BV(CS21);
}

/* The functions on an output are inlined with its constants: so it takes few instructions, and no table in RAM. */

static inline void hold(struct output output, bool high)
{
    if (high)
        *output.port |= output.pin;
    else
        *output.port &= (uint8_t)~output.pin;
    *output.control &= (uint8_t)~output.connect;
}

/* An output is high for one step more than its compare register says. */

static inline void modulate_8(struct output output, volatile uint8_t *compare, uint16_t duty)
{
    uint8_t steps = duty >> 8;
    if (duty == UINT16_MAX || steps == 0) {
        hold(output, steps != 0);
        return;
    }
    *compare = (uint8_t)(steps - 1);
    *output.control |= output.connect;
}

static inline void modulate_12(struct output output, volatile uint16_t *compare, uint16_t duty)
{
    uint16_t steps = duty >> 4;
    if (duty == UINT16_MAX || steps == 0) {
        hold(output, steps != 0);
        return;
    }
    *compare = (uint16_t)(steps - 1);
    *output.control |= output.connect;
}

void port_dimmer(uint8_t index, uint16_t duty)
{
    switch (index) {
    case 0:
        modulate_8((struct output){ &PORTD, _BV(PD6), &TCCR0A, _BV(COM0A1) }, &OCR0A, duty);
        break;
    case 1:
        modulate_8((struct output){ &PORTD, _BV(PD5), &TCCR0A, _BV(COM0B1) }, &OCR0B, duty);
        break;
    case 2:
        modulate_12((struct output){ &PORTB, _BV(PB1), &TCCR1A, _BV(COM1A1) }, &OCR1A, duty);
        break;
    case 3:
        modulate_12((struct output){ &PORTB, _BV(PB2), &TCCR1A, _BV(COM1B1) }, &OCR1B, duty);
        break;
    case 4:
        modulate_8((struct output){ &PORTB, _BV(PB3), &TCCR2A, _BV(COM2A1) }, &OCR2A, duty);
        break;
    default:
        modulate_8((struct output){ &PORTD, _BV(PD3), &TCCR2A, _BV(COM2B1) }, &OCR2B, duty);
        break;
    }
}
