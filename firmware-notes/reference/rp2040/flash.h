/** The flash chip's unique number, which tells boards apart. */
#ifndef FLASH_H
#define FLASH_H

#include <stdint.h>

#include "port.h"

/**
 * Reads the number, all zero if the chip does not report one. Afterwards the flash can no longer be read by address. The code runs from
 * RAM.
 */
void flash_id(uint8_t id[PORT_ID_BYTES]);

#endif
