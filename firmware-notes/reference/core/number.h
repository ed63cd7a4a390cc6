/**
 * Numbers of the wire: high byte first, unsigned (wire.md section 1). The checksum is none of them: it is low byte first.
 */
#ifndef NUMBER_H
#define NUMBER_H

#include <stdint.h>

/** The number in the two bytes at `bytes`. */
uint16_t number_read(const uint8_t *bytes);

/** Writes `number` into the two bytes at `bytes`. */
void number_write(uint8_t *bytes, uint16_t number);

#endif
