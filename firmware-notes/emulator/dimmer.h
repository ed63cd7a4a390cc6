#ifndef LAMPWRIGHT_DIMMER_H
#define LAMPWRIGHT_DIMMER_H

#include <stdbool.h>
#include <stdint.h>

/*
 * What the six PWM outputs of the ATmega328P produce, calculated from the timers' registers by the rules of its datasheet (waveform
 * generation modes of timers 0, 1 and 2). The pins' edges are not measured.
 */

enum { DIMMER_OUTPUTS = 6 };

struct dimmer {
    const char *output;                 /* "OC0A" */
    const char *pin;                    /* "PD6" */
    bool driven;                        /* the pin is an output */
    bool known;                         /* duty and hz are valid; not so with a timer stopped or clocked externally */
    double duty;                        /* share of the time that the pin is high, 0 to 1; 0 when not driven */
    double hz;                          /* 0 when the level does not change */
    bool from_known;                    /* from is valid: in fast PWM only, and if the level changes */
    double from;                        /* where in its timer's period, 0 to 1, the pin goes high */
};

/* The registers that determine the outputs. All zero, it is a state that no chip has. */
enum { DIMMER_REGISTERS = 20 };
struct dimmer_registers {
    uint8_t value[DIMMER_REGISTERS];
};

/* Calculates output `which` (0 OC0A, 1 OC0B, 2 OC1A ... 5 OC2B) from the chip's data memory, clocked at clock_hz. */
struct dimmer dimmer_reckon(const uint8_t *data, int which, double clock_hz);

/* Whether a register differs from its last seen value, which is then updated. */
bool dimmer_touched(struct dimmer_registers *seen, const uint8_t *data);

bool dimmer_same(const struct dimmer *a, const struct dimmer *b);

#endif
