/**
 * What a light draws, calculated apart from the core: in floating point, in mA, straight from bytes and duties.
 */
#ifndef DRAW_H
#define DRAW_H

#include <stdbool.h>
#include <stdint.h>

#include "setup.h"

/** Current in mA that `supply` gives for these bytes and duties. */
double draw_mA(const struct setup *setup, const uint8_t *bytes, const uint16_t *duty, uint8_t supply);

/** Current in mA of the dark strip, if it hangs on `supply`. */
double draw_dark_mA(const struct setup *setup, uint8_t supply);

/** Whether no supply is over its ceiling, but by a dark strip alone. */
bool draw_within(const struct setup *setup, const uint8_t *bytes, const uint16_t *duty);

#endif
