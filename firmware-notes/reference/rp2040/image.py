"""
What the RP2040's ROM requires of an image.

  image.py checksum STAGE OUT    completes the second stage of the boot, 256 bytes, with its checksum
  image.py uf2 IMAGE OUT         the file to copy onto the board: IMAGE as it is to lie at the flash's beginning

The checksum: RP2040 datasheet, "Flash Second Stage": CRC-32, polynomial 0x04C11DB7, not reflected, started at 0xFFFFFFFF,
nothing xored at the end, low byte first behind the 252 bytes. The file: the published UF2 format, in blocks of 512 bytes that
carry 256; family 0xE48BFF56 is the RP2040.
"""

import struct
import sys

STAGE_BYTES = 252
POLYNOMIAL = 0x04C11DB7

FLASH = 0x10000000
PAGE = 256
BLOCK_ROOM = 476
MAGIC = 0x0A324655, 0x9E5D5157, 0x0AB16F30
HAS_FAMILY = 0x2000
FAMILY = 0xE48BFF56


def crc32(data):
    value = 0xFFFFFFFF
    for byte in data:
        value ^= byte << 24
        for _ in range(8):
            value = (value << 1 ^ POLYNOMIAL if value & 0x80000000 else value << 1) & 0xFFFFFFFF
    return value


def checksum(stage):
    assert len(stage) == STAGE_BYTES + 4, len(stage)
    return stage[:STAGE_BYTES] + struct.pack("<I", crc32(stage[:STAGE_BYTES]))


def uf2(image):
    pages = [image[at:at + PAGE].ljust(PAGE, b"\0") for at in range(0, len(image), PAGE)]
    out = b""
    for number, page in enumerate(pages):
        head = struct.pack("<8I", *MAGIC[:2], HAS_FAMILY, FLASH + PAGE * number, PAGE, number, len(pages), FAMILY)
        out += head + page.ljust(BLOCK_ROOM, b"\0") + struct.pack("<I", MAGIC[2])
    return out


def main():
    what, source, target = sys.argv[1:]
    with open(source, "rb") as file:
        data = file.read()
    with open(target, "wb") as file:
        file.write({"checksum": checksum, "uf2": uf2}[what](data))


if __name__ == "__main__":
    main()
