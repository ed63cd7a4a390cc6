#ifndef LAMPWRIGHT_IMAGE_H
#define LAMPWRIGHT_IMAGE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* The contents of the chip's memories from an AVR executable. */

enum { IMAGE_FLASH_BYTES = 32768, IMAGE_EEPROM_BYTES = 1024, IMAGE_RAM_BEGIN = 0x100, IMAGE_RAM_END = 0x900 };

struct image {
    uint8_t flash[IMAGE_FLASH_BYTES];
    size_t flash_end;                   /* bytes from 0 that the file reaches; the rest is 0xff */
    uint8_t eeprom[IMAGE_EEPROM_BYTES];
    size_t eeprom_end;
    size_t variables_end;               /* address in RAM past the last variable */
};

/* The initial contents of an EEPROM. */
struct image_eeprom {
    uint8_t bytes[IMAGE_EEPROM_BYTES];
    size_t count;
};

/* Reads the loadable segments of an ELF file for the AVR. False if that fails; *complaint then says why. */
bool image_read(const char *path, struct image *image, const char **complaint);

/* Reads bytes of two hexadecimal digits each. False if `text` is anything else, or more than the EEPROM holds. */
bool image_read_eeprom(const char *text, struct image_eeprom *eeprom);

/* Writes bytes to the EEPROM, replacing those from the file. */
void image_preload(struct image *image, const struct image_eeprom *eeprom);

#endif
