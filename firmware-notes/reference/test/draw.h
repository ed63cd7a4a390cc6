/** What a light draws, calculated independently of the core: in floating point, in mA, directly from bytes and duties. */
#ifndef DRAW_H
#define DRAW_H

#include <stdbool.h>
#include <stdint.h>

#include "setup.h"

/** Current in mA that `supply` delivers for these bytes and duties. */
double draw_mA(const struct setup *setup, const uint8_t *bytes, const uint16_t *duty, uint8_t supply);

/** Current in mA of the dark strip, if it is on `supply`. */
double draw_dark_mA(const struct setup *setup, uint8_t supply);

/** Whether no supply is over its ceiling, except for a dark strip alone. */
bool draw_within(const struct setup *setup, const uint8_t *bytes, const uint16_t *duty);

#endif
