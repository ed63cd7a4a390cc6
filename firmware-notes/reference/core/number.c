#include "number.h"

uint16_t number_read(const uint8_t *bytes)
{
    return (uint16_t)((uint16_t)bytes[0] << 8 | bytes[1]);
}

void number_write(uint8_t *bytes, uint16_t number)
{
    bytes[0] = (uint8_t)(number >> 8);
    bytes[1] = (uint8_t)number;
}
