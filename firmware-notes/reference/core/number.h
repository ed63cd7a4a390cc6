/** Numbers of the wire format: high byte first, unsigned (wire.md section 1). The checksum is the exception: it is low byte first. */
#ifndef NUMBER_H
#define NUMBER_H

#include <stdint.h>

#include "bits.h"

/** The number in the two bytes at `bytes`. */
/*@ requires \valid_read(bytes + (0 .. 1));
    assigns \nothing;
    ensures \result == 256 * bytes[0] + bytes[1];
*/
uint16_t number_read(const uint8_t *bytes);

/** Writes `number` into the two bytes at `bytes`. */
/*@ requires \valid(bytes + (0 .. 1));
    assigns bytes[0 .. 1];
    ensures number == 256 * bytes[0] + bytes[1];
*/
void number_write(uint8_t *bytes, uint16_t number);

#endif
