#include "strip.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <stdbool.h>
#include <stdint.h>

#include "clock.h"
#include "pins.h"
#include "port.h"

_Static_assert(F_CPU == 16000000, "the pulse widths are counted in cycles of 16 MHz");

/* Cycles per byte. */
#define BYTE_CYCLES 160u

/* Reset time between two frames: over 280 us (WS2812B datasheet, later issues), in the clock's steps of 16 us. */
#define RESET_STEPS (280 / 16 + 2)

static uint16_t idle_since;
static bool latched;

void strip_start(void)
{
    STRIP_PORT &= (uint8_t)~_BV(STRIP_BIT);
    STRIP_DDR |= _BV(STRIP_BIT);
    idle_since = clock_16us();
}

/* The clock wraps around, so once the reset time is over it is not checked again. */
bool port_latched(void)
{
    if (!latched)
        latched = (uint16_t)(clock_16us() - idle_since) >= RESET_STEPS;
    return latched;
}

/*
 * Call with interrupts off; `length` is 1 or more. The number before each line is the cycle of the bit in which it starts. The last byte
 * reads one byte past the end, which is valid memory and is not shown.
 */
static void send(const uint8_t *bytes, uint16_t length)
{
    uint8_t high = STRIP_PORT | _BV(STRIP_BIT);
    uint8_t low = STRIP_PORT & (uint8_t)~_BV(STRIP_BIT);
    uint8_t byte;
    uint8_t bits = 8;
    __asm__ volatile(
        "        ld   %[byte], %a[bytes]+  \n"
        "bit%=:                            \n"
        "        out  %[port], %[high]     \n" /*  0 */
        "        rjmp .+0                  \n" /*  1 */
        "        nop                       \n" /*  3 */
        "        sbrs %[byte], 7           \n" /*  4 */
        "        out  %[port], %[low]      \n" /*  5: a 0 code's high ends */
        "        lsl  %[byte]              \n" /*  6 */
        "        dec  %[bits]              \n" /*  7 */
        "        brne more%=               \n" /*  8 */
        "        ld   %[byte], %a[bytes]+  \n" /*  9 */
        "        out  %[port], %[low]      \n" /* 11: a 1 code's high ends */
        "        ldi  %[bits], 8           \n" /* 12 */
        "        sbiw %[length], 1         \n" /* 13 */
        "        rjmp .+0                  \n" /* 15 */
        "        nop                       \n" /* 17 */
        "        brne bit%=                \n" /* 18 */
        "        rjmp done%=               \n"
        "more%=:                           \n"
        "        nop                       \n" /* 10 */
        "        out  %[port], %[low]      \n" /* 11: a 1 code's high ends */
        "        rjmp .+0                  \n" /* 12 */
        "        rjmp .+0                  \n" /* 14 */
        "        rjmp .+0                  \n" /* 16 */
        "        rjmp bit%=                \n" /* 18 */
        "done%=:                           \n"
        : [byte] "=&r"(byte), [bits] "+&d"(bits), [length] "+&w"(length), [bytes] "+&z"(bytes)
        : [port] "I"(_SFR_IO_ADDR(STRIP_PORT)), [high] "r"(high), [low] "r"(low)
        : "memory");
}

void port_strip(const uint8_t *bytes, uint16_t length)
{
    if (length == 0)
        return;
    cli();
    uint16_t paused = clock_pause();
    send(bytes, length);
    clock_resume(paused, (uint32_t)length * BYTE_CYCLES);
    idle_since = clock_16us();
    latched = false;
    sei();
}
