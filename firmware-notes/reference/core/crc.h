/**
 * CRC-16/IBM-3740: polynomial 0x1021, started at 0xFFFF, not reflected, nothing xored at the end. Check value: 0x29B1 for
 * the nine bytes "123456789" (catalogue of parametrised CRC algorithms).
 */
#ifndef CRC_H
#define CRC_H

#include <stdint.h>

/** The checksum of nothing. */
#define CRC_START 0xFFFFu

/** The checksum of what `crc` stands for, followed by `byte`. */
static inline uint16_t crc_next(uint16_t crc, uint8_t byte)
{
    /* Eight steps of the shift register at once, held as two bytes: 0x1021 is bits 12, 5 and 0. */
    uint8_t mixed = (uint8_t)(crc >> 8) ^ byte;
    mixed ^= mixed >> 4;
    uint8_t high = (uint8_t)((uint8_t)crc ^ (uint8_t)(mixed << 4) ^ (mixed >> 3));
    uint8_t low = (uint8_t)(mixed ^ (uint8_t)(mixed << 5));
    return (uint16_t)((uint16_t)high << 8 | low);
}

#endif
