#include "dimmers.h"

#include <avr/io.h>
#include <stdint.h>

#include "port.h"

/* One output: its pin, its timer's control register with the bit that connects the pin, its compare register. */
struct output {
    volatile uint8_t *port;
    uint8_t pin;
    volatile uint8_t *control;
    uint8_t connect;
    volatile uint8_t *compare;
    uint8_t wide; /* the compare register has 12 bits in use, not 8 */
};

static const struct output outputs[] = {
    { &PORTD, _BV(PD6), &TCCR0A, _BV(COM0A1), &OCR0A, 0 },
    { &PORTD, _BV(PD5), &TCCR0A, _BV(COM0B1), &OCR0B, 0 },
    { &PORTB, _BV(PB1), &TCCR1A, _BV(COM1A1), &OCR1AL, 1 },
    { &PORTB, _BV(PB2), &TCCR1A, _BV(COM1B1), &OCR1BL, 1 },
    { &PORTB, _BV(PB3), &TCCR2A, _BV(COM2A1), &OCR2A, 0 },
    { &PORTD, _BV(PD3), &TCCR2A, _BV(COM2B1), &OCR2B, 0 },
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

static void hold(const struct output *output, uint8_t high)
{
    if (high)
        *output->port |= output->pin;
    else
        *output->port &= (uint8_t)~output->pin;
    *output->control &= (uint8_t)~output->connect;
}

/* An output is high for one step more than its compare register says, so `steps` is 1 or more. */
static void modulate(const struct output *output, uint16_t steps)
{
    if (output->wide)
        *(volatile uint16_t *)output->compare = (uint16_t)(steps - 1);
    else
        *output->compare = (uint8_t)(steps - 1);
    *output->control |= output->connect;
}

void port_dimmer(uint8_t index, uint16_t duty)
{
    const struct output *output = &outputs[index];
    uint16_t steps = output->wide ? duty >> 4 : duty >> 8;
    if (duty == UINT16_MAX || steps == 0)
        hold(output, duty == UINT16_MAX);
    else
        modulate(output, steps);
}
