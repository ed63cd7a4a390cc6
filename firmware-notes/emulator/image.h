#ifndef LAMPWRIGHT_IMAGE_H
#define LAMPWRIGHT_IMAGE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* What an AVR executable puts into the chip's memories. */

enum { IMAGE_FLASH_BYTES = 32768, IMAGE_EEPROM_BYTES = 1024 };

struct image {
    uint8_t flash[IMAGE_FLASH_BYTES];
    size_t flash_end;                   /* bytes from 0 that the file reaches; the rest is 0xff */
    uint8_t eeprom[IMAGE_EEPROM_BYTES];
    size_t eeprom_end;
};

/* Reads the loadable segments of an ELF file for the AVR. False if that fails; *complaint then says why. */
bool image_read(const char *path, struct image *image, const char **complaint);

#endif
