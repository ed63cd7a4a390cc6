#include "number.h"

uint16_t number_read(const uint8_t *bytes)
{
    //@ assert (bytes[0] << 8) == 256 * bytes[0];
    return (uint16_t)((uint16_t)bytes[0] << 8 | bytes[1]);
}

void number_write(uint8_t *bytes, uint16_t number)
{
    //@ assert (number >> 8) == number / 256;
    bytes[0] = (uint8_t)(number >> 8);
    //@ assert bytes[0] == number / 256;
    bytes[1] = (uint8_t)number;
    //@ assert bytes[0] == number / 256 && bytes[1] == number % 256;
}
