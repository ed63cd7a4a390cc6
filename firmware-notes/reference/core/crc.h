/**
 * CRC-16/IBM-3740: polynomial 0x1021, initial value 0xFFFF, not reflected, no final xor. Check value: 0x29B1 for the nine bytes "123456789"
 * (catalogue of parametrised CRC algorithms).
 */
#ifndef CRC_H
#define CRC_H

#include <stdint.h>

#include "bits.h"

/** A checksum as two bytes, so that an 8-bit chip need not combine them. */
struct crc {
    uint8_t high;
    uint8_t low;
};

/** The checksum of no bytes. */
#define CRC_START ((struct crc){ 0xFF, 0xFF })

/** The checksum of the bytes covered by `crc`, followed by `byte`. */
/*@ assigns \nothing; */
static inline struct crc crc_next(struct crc crc, uint8_t byte)
{
    /* Eight steps of the shift register at once: 0x1021 is bits 12, 5 and 0. */
    uint8_t mixed = crc.high ^ byte;
    mixed ^= mixed >> 4;
    uint8_t shifted = (uint8_t)(mixed << 4);
    return (struct crc){ crc.low ^ shifted ^ (mixed >> 3), mixed ^ (uint8_t)(shifted << 1) };
}

#endif
