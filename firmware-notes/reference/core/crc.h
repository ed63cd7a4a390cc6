/**
 * CRC-16/IBM-3740: polynomial 0x1021, started at 0xFFFF, not reflected, nothing xored at the end. Check value: 0x29B1 for
 * the nine bytes "123456789" (catalogue of parametrised CRC algorithms).
 */
#ifndef CRC_H
#define CRC_H

#include <stdint.h>

/** The checksum of nothing. */
#define CRC_START 0xFFFFu

/** The checksum of what `crc` stands for, followed by `byte`. Run over data and its checksum, high byte first, it is 0. */
uint16_t crc_next(uint16_t crc, uint8_t byte);

#endif
