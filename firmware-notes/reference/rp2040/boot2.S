/*
 * The second stage of the boot (RP2040 datasheet, "Flash Second Stage"): 252 bytes and their checksum, which image.py writes.
 * The chip's ROM copies it to RAM and runs it there. It lets the flash be read with the plain serial read command 03h, which
 * every flash chip has, and starts the program behind it. Slow is good enough: all code is copied to RAM before it runs.
 */
#define SSI 0x18000000
#define CTRLR0 0x00
#define CTRLR1 0x04
#define SSIENR 0x08
#define BAUDR 0x14
#define SPI_CTRLR0 0xF4

#define FRAME_32_BITS (31 << 16)
#define EEPROM_READ (3 << 8) /* sends a command, then reads */
#define COMMAND_READ (0x03 << 24)
#define COMMAND_8_BITS (2 << 8)
#define ADDRESS_24_BITS (6 << 2)

#define VECTORS 0x10000100
#define VTOR 0xE000ED08

        .syntax unified
        .cpu cortex-m0plus
        .thumb
        .section .boot2, "ax"
        ldr  r3, =SSI
        movs r0, #0
        str  r0, [r3, #SSIENR]
        movs r1, #2
        str  r1, [r3, #BAUDR]
        ldr  r1, =FRAME_32_BITS | EEPROM_READ
        str  r1, [r3, #CTRLR0]
        str  r0, [r3, #CTRLR1]
        ldr  r1, =COMMAND_READ | COMMAND_8_BITS | ADDRESS_24_BITS
        ldr  r2, =SSI + SPI_CTRLR0
        str  r1, [r2]
        movs r1, #1
        str  r1, [r3, #SSIENR]
        ldr  r0, =VECTORS
        ldr  r1, =VTOR
        str  r0, [r1]
        ldm  r0!, {r1, r2}
        msr  msp, r1
        bx   r2
        .pool
