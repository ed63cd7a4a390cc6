/**
 * The flash chip's own number, which tells boards apart.
 */
#ifndef FLASH_H
#define FLASH_H

#include <stdint.h>

#include "port.h"

/**
 * Reads the number, all zero if the chip tells none. Nothing of the flash can be read by address afterwards. The code runs
 * from RAM.
 */
void flash_id(uint8_t id[PORT_ID_BYTES]);

#endif
