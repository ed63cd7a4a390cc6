#include "image.h"

#include <ctype.h>
#include <elf.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Where GNU tools put the AVR's EEPROM in the single address space of an ELF file; fuses and lock bits lie beyond. */
enum { RAM_BASE = 0x800000, EEPROM_BASE = 0x810000, FUSE_BASE = 0x820000 };

enum { MOST_FILE_BYTES = 16 << 20 };

struct file {
    uint8_t *bytes;
    size_t count;
};

static bool read_stream(FILE *stream, struct file *file)
{
    if (fseek(stream, 0, SEEK_END) != 0)
        return false;
    long size = ftell(stream);
    if (size < 0 || size > MOST_FILE_BYTES || fseek(stream, 0, SEEK_SET) != 0)
        return false;
    file->count = (size_t)size;
    file->bytes = malloc(file->count + 1);
    return file->bytes != NULL && fread(file->bytes, 1, file->count, stream) == file->count;
}

static bool read_file(const char *path, struct file *file, const char **complaint)
{
    FILE *stream = fopen(path, "rb");
    if (stream == NULL) {
        *complaint = strerror(errno);
        return false;
    }
    bool read = read_stream(stream, file);
    fclose(stream);
    if (!read)
        *complaint = "it cannot be read as a whole";
    return read;
}

static bool is_avr(const struct file *file)
{
    Elf32_Ehdr header;
    if (file->count < sizeof header)
        return false;
    memcpy(&header, file->bytes, sizeof header);
    return memcmp(header.e_ident, ELFMAG, SELFMAG) == 0 && header.e_ident[EI_CLASS] == ELFCLASS32
        && header.e_ident[EI_DATA] == ELFDATA2LSB && header.e_machine == EM_AVR
        && header.e_phentsize == sizeof(Elf32_Phdr);
}

static bool copy(uint8_t *memory, size_t size, size_t *end, size_t at, const uint8_t *bytes, size_t count)
{
    if (at > size || count > size - at)
        return false;
    memcpy(memory + at, bytes, count);
    if (at + count > *end)
        *end = at + count;
    return true;
}

/* Variables have their place in RAM, whether the file has values for them or not. */
static bool note_variables(const Elf32_Phdr *segment, struct image *image)
{
    if (segment->p_type != PT_LOAD || segment->p_vaddr < RAM_BASE || segment->p_vaddr >= EEPROM_BASE)
        return true;
    uint64_t end = (uint64_t)(segment->p_vaddr - RAM_BASE) + segment->p_memsz;
    if (end > IMAGE_RAM_END)
        return false;
    if (end > image->variables_end)
        image->variables_end = (size_t)end;
    return true;
}

static bool load_segment(const struct file *file, const Elf32_Phdr *segment, struct image *image)
{
    if (segment->p_type != PT_LOAD || segment->p_filesz == 0 || segment->p_paddr >= FUSE_BASE)
        return true;
    if (segment->p_offset > file->count || segment->p_filesz > file->count - segment->p_offset)
        return false;
    const uint8_t *bytes = file->bytes + segment->p_offset;
    if (segment->p_paddr >= EEPROM_BASE)
        return copy(image->eeprom, IMAGE_EEPROM_BYTES, &image->eeprom_end, segment->p_paddr - EEPROM_BASE, bytes,
                    segment->p_filesz);
    return copy(image->flash, IMAGE_FLASH_BYTES, &image->flash_end, segment->p_paddr, bytes, segment->p_filesz);
}

static bool load_segments(const struct file *file, struct image *image)
{
    Elf32_Ehdr header;
    memcpy(&header, file->bytes, sizeof header);
    for (size_t i = 0; i < header.e_phnum; i++) {
        Elf32_Phdr segment;
        size_t at = header.e_phoff + i * sizeof segment;
        if (at > file->count || sizeof segment > file->count - at)
            return false;
        memcpy(&segment, file->bytes + at, sizeof segment);
        if (!note_variables(&segment, image) || !load_segment(file, &segment, image))
            return false;
    }
    return image->flash_end > 0;
}

static bool load(const struct file *file, struct image *image, const char **complaint)
{
    *complaint = "it is no ELF file for the AVR";
    if (!is_avr(file))
        return false;
    *complaint = "its segments are broken, or do not fit an ATmega328P";
    return load_segments(file, image);
}

bool image_read(const char *path, struct image *image, const char **complaint)
{
    struct file file = {0};
    memset(image, 0, sizeof *image);
    memset(image->flash, 0xff, sizeof image->flash);
    memset(image->eeprom, 0xff, sizeof image->eeprom);
    image->variables_end = IMAGE_RAM_BEGIN;
    bool loaded = read_file(path, &file, complaint) && load(&file, image, complaint);
    free(file.bytes);
    return loaded;
}

bool image_read_eeprom(const char *text, struct image_eeprom *eeprom)
{
    size_t digits = strlen(text);
    if (digits == 0 || digits % 2 != 0 || digits / 2 > IMAGE_EEPROM_BYTES)
        return false;
    for (eeprom->count = 0; eeprom->count < digits / 2; eeprom->count++) {
        const char *at = text + 2 * eeprom->count;
        char byte[3] = {at[0], at[1], 0};
        if (!isxdigit((unsigned char)at[0]) || !isxdigit((unsigned char)at[1]))
            return false;
        eeprom->bytes[eeprom->count] = (uint8_t)strtoul(byte, NULL, 16);
    }
    return true;
}

void image_preload(struct image *image, const struct image_eeprom *eeprom)
{
    memcpy(image->eeprom, eeprom->bytes, eeprom->count);
    if (image->eeprom_end < eeprom->count)
        image->eeprom_end = eeprom->count;
}
