#include "strip.h"

#include <stdint.h>
#include <string.h>

#include "clock.h"
#include "dimmers.h"
#include "limits.h"
#include "pins.h"
#include "port.h"
#include "rp2040.h"

#define LINES 8u
#define BIT_HZ 16000000u
#define BYTE_US 10u

/* Reset time between two frames: over 280 us (WS2812B datasheet, later issues). */
#define RESET_US 300u

_Static_assert(CLOCK_HZ % BIT_HZ == 0, "a divider with a fraction would make pulses of unequal length");
_Static_assert(STRIP_BYTE_NS == BYTE_US * 1000, "the strip takes 20 cycles of 16 MHz a bit");

/* The program, four instructions a bit (datasheet 3.4). It stands still where the pin is low. */
static const uint16_t program[] = {
    0x6021,            /* out x, 1          1 low, or waits here for a byte */
    0xE001 | 4u << 8,  /* set pins, 1 [4]   5 high */
    0xA001 | 5u << 8,  /* mov pins, x [5]   6 as the bit is */
    0xE000 | 7u << 8,  /* set pins, 0 [7]   8 low */
};
#define PROGRAM_LENGTH (sizeof program / sizeof program[0])

#define SET_PINS_0 0xE000u
#define SET_PINDIRS_1 0xE081u

/* EXECCTRL, SHIFTCTRL and PINCTRL (3.7): wrap at the program's end; bytes, their high bit first, pulled as they run out. */
#define WRAP_TOP ((PROGRAM_LENGTH - 1) << 12)
#define AUTOPULL (1u << 17)
#define PULL_AFTER_8 (8u << 25)
#define JOIN_TX (1u << 30)
#define ONE_SET_PIN (1u << 26)
#define ONE_OUT_PIN (1u << 20)
#define ALL_MACHINES 0xFu
#define RESTART(machines) ((machines) << 4)

/* One data line: what it takes of a frame, and what of it may be lit beyond that. */
struct line {
    uint16_t length; /* bytes of a frame */
    uint16_t lit;    /* bytes that may be lit since before the set-up; 0 once they have been driven */
    uint8_t bytes[STORE_BYTES] __attribute__((aligned(4)));
};

static struct line lines[LINES];
static uint32_t free_at; /* when the reset time of the frame driven last is over, in us */

static uint32_t block_of(uint32_t line)
{
    return line / 4;
}

static uint32_t machine_of(uint32_t line)
{
    return line % 4;
}

static void start_machine(uint32_t line)
{
    uint32_t block = block_of(line);
    uint32_t machine = machine_of(line);
    uint32_t pin = STRIP_FIRST_PIN + line;
    SM_CLKDIV(block, machine) = CLOCK_HZ / BIT_HZ << 16;
    SM_EXECCTRL(block, machine) = WRAP_TOP;
    SM_SHIFTCTRL(block, machine) = PULL_AFTER_8 | AUTOPULL | JOIN_TX;
    SM_PINCTRL(block, machine) = ONE_SET_PIN | ONE_OUT_PIN | pin << 5 | pin;
    SM_INSTR(block, machine) = SET_PINS_0;
    SM_INSTR(block, machine) = SET_PINDIRS_1;
    GPIO_CTRL(pin) = block == 0 ? FUNCTION_PIO0 : FUNCTION_PIO1;
}

/* Requests 0 to 3 are those of the first block's machines, 8 to 11 of the second's (2.5.3.1). A byte fills a word's four. */
static void start_channel(uint32_t line)
{
    uint32_t request = 8 * block_of(line) + machine_of(line);
    DMA_WRITE_ADDR(line) = PIO_TXF(block_of(line), machine_of(line));
    DMA_CTRL(line) = DMA_ENABLE | DMA_INCREMENT_READ | DMA_CHAIN_TO(line) | DMA_REQUEST(request) | DMA_QUIET;
}

void strip_start(void)
{
    for (uint32_t block = 0; block < 2; block++)
        for (uint32_t at = 0; at < PROGRAM_LENGTH; at++)
            PIO_INSTR_MEM(block, at) = program[at];
    for (uint32_t line = 0; line < LINES; line++) {
        start_machine(line);
        start_channel(line);
        lines[line].lit = STORE_BYTES;
    }
    lines[0].length = STORE_BYTES;
    PIO_CTRL(0) = ALL_MACHINES | RESTART(ALL_MACHINES);
    PIO_CTRL(1) = ALL_MACHINES | RESTART(ALL_MACHINES);
    free_at = clock_us() + RESET_US;
}

static bool is_busy(void)
{
    uint32_t busy = 0;
    for (uint32_t line = 0; line < LINES; line++)
        busy |= DMA_CTRL(line) & DMA_BUSY;
    return busy != 0;
}

bool strip_latched(void)
{
    return clock_reached(free_at) && !is_busy();
}

void strip_wait(void)
{
    clock_wait(free_at);
    while (is_busy()) {
    }
}

static uint16_t more(uint16_t one, uint16_t other)
{
    return one > other ? one : other;
}

/* Fills a line's buffer with its share, and what may be lit beyond it with darkness. Answers how many bytes that makes. */
static uint16_t fill(struct line *line, const uint8_t *bytes, uint16_t length)
{
    uint16_t whole = more(length, line->lit);
    memcpy(line->bytes, bytes, length);
    memset(line->bytes + length, 0, whole - length);
    line->lit = 0;
    return whole;
}

void port_strip(const uint8_t *bytes, uint16_t length)
{
    uint32_t started = 0;
    uint16_t longest = 0;
    if (length == 0)
        return;
    strip_wait();
    dimmers_poll();
    for (uint32_t i = 0; i < LINES; i++) {
        uint16_t share = lines[i].length < length ? lines[i].length : length;
        uint16_t whole = fill(&lines[i], bytes, share);
        bytes += share;
        length = (uint16_t)(length - share);
        longest = more(longest, whole);
        DMA_READ_ADDR(i) = (uint32_t)(uintptr_t)lines[i].bytes;
        DMA_TRANS_COUNT(i) = whole;
        started |= whole > 0 ? 1u << i : 0;
    }
    DMA_TRIGGER = started;
    free_at = clock_us() + longest * BYTE_US + RESET_US;
}
