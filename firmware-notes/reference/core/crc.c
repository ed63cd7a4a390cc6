#include "crc.h"

/* Eight steps of the shift register at once, held as two bytes: 0x1021 is bits 12, 5 and 0. */
uint16_t crc_next(uint16_t crc, uint8_t byte)
{
    uint8_t mixed = (uint8_t)(crc >> 8) ^ byte;
    mixed ^= mixed >> 4;
    uint8_t high = (uint8_t)((uint8_t)crc ^ (uint8_t)(mixed << 4) ^ (mixed >> 3));
    uint8_t low = (uint8_t)(mixed ^ (uint8_t)(mixed << 5));
    return (uint16_t)((uint16_t)high << 8 | low);
}
