#include "strip.h"

#include <stdint.h>
#include <string.h>

#include "clock.h"
#include "limits.h"
#include "pins.h"
#include "port.h"
#include "rp2040.h"

#define BIT_HZ 16000000u
#define BYTE_US 10u

/* Reset time between two frames: over 280 us (WS2812B datasheet, later issues). */
#define RESET_US 300u

_Static_assert(CLOCK_HZ % BIT_HZ == 0, "a divider with a fraction would make pulses of unequal length");
_Static_assert(STRIP_BYTE_NS == BYTE_US * 1000, "the strip takes 20 cycles of 16 MHz a bit");

/* The program, four instructions per bit (datasheet 3.4). It stalls while the pin is low. */
static const uint16_t program[] = {
    0x6021,            /* out x, 1          1 low, or waits here for a byte */
    0xE001 | 4u << 8,  /* set pins, 1 [4]   5 high */
    0xA001 | 5u << 8,  /* mov pins, x [5]   6 as the bit is */
    0xE000 | 7u << 8,  /* set pins, 0 [7]   8 low */
};
#define PROGRAM_LENGTH (sizeof program / sizeof program[0])

#define SET_PINS_0 0xE000u
#define SET_PINDIRS_1 0xE081u

/* EXECCTRL, SHIFTCTRL and PINCTRL (3.7): wrap at the program's end; bytes with the high bit first, pulled as they run out. */
#define WRAP_TOP ((PROGRAM_LENGTH - 1) << 12)
#define AUTOPULL (1u << 17)
#define PULL_AFTER_8 (8u << 25)
#define JOIN_TX (1u << 30)
#define ONE_SET_PIN (1u << 26)
#define ONE_OUT_PIN (1u << 20)
#define ALL_MACHINES 0xFu
#define RESTART(machines) ((machines) << 4)

/* One data line: its share of a frame, and how much may still be lit beyond that from an earlier set-up. */
struct output {
    uint16_t length; /* maximum bytes of a frame */
    uint16_t driven; /* bytes of the last frame */
    uint16_t lit;    /* bytes that are at least driven with the next frame */
    uint16_t share;  /* bytes of the frame being driven, and where they come from */
    const uint8_t *from;
    uint8_t bytes[STORE_BYTES] __attribute__((aligned(4)));
};

static struct output outputs[OUTPUTS];
static uint8_t order[OUTPUTS]; /* which output each run is on */
static uint8_t runs;           /* none at the start: then everything is driven dark */
static uint32_t free_at; /* when the reset time of the frame driven last is over, in us */
static bool latched;     /* that time has come */

static uint32_t block_of(uint32_t output)
{
    return output / 4;
}

static uint32_t machine_of(uint32_t output)
{
    return output % 4;
}

static void start_machine(uint32_t output)
{
    uint32_t block = block_of(output);
    uint32_t machine = machine_of(output);
    uint32_t pin = STRIP_FIRST_PIN + output;
    SM_CLKDIV(block, machine) = CLOCK_HZ / BIT_HZ << 16;
    SM_EXECCTRL(block, machine) = WRAP_TOP;
    SM_SHIFTCTRL(block, machine) = PULL_AFTER_8 | AUTOPULL | JOIN_TX;
    SM_PINCTRL(block, machine) = ONE_SET_PIN | ONE_OUT_PIN | pin << 5 | pin;
    SM_INSTR(block, machine) = SET_PINS_0;
    SM_INSTR(block, machine) = SET_PINDIRS_1;
    GPIO_CTRL(pin) = block == 0 ? FUNCTION_PIO0 : FUNCTION_PIO1;
}

/* Requests 0 to 3 are those of the first block's machines, 8 to 11 of the second's (2.5.3.1). A byte fills all four bytes of a word. */
static void start_channel(uint32_t output)
{
    uint32_t request = 8 * block_of(output) + machine_of(output);
    DMA_WRITE_ADDR(output) = PIO_TXF(block_of(output), machine_of(output));
    DMA_CTRL(output) = DMA_ENABLE | DMA_INCREMENT_READ | DMA_CHAIN_TO(output) | DMA_REQUEST(request) | DMA_QUIET;
}

void strip_start(void)
{
    for (uint32_t block = 0; block < 2; block++)
        for (uint32_t at = 0; at < PROGRAM_LENGTH; at++)
            PIO_INSTR_MEM(block, at) = program[at];
    for (uint32_t output = 0; output < OUTPUTS; output++) {
        start_machine(output);
        start_channel(output);
        outputs[output].lit = STORE_BYTES;
    }
    PIO_CTRL(0) = ALL_MACHINES | RESTART(ALL_MACHINES);
    PIO_CTRL(1) = ALL_MACHINES | RESTART(ALL_MACHINES);
    free_at = clock_us() + RESET_US;
}

static bool is_busy(void)
{
    uint32_t busy = 0;
    for (uint32_t output = 0; output < OUTPUTS; output++)
        busy |= DMA_CTRL(output) & DMA_BUSY;
    return busy != 0;
}

/* The clock wraps around, so once the reset time is over it is not checked again. */
bool port_latched(void)
{
    if (!latched)
        latched = clock_reached(free_at) && !is_busy();
    return latched;
}

void strip_wait(void)
{
    if (!port_latched())
        clock_wait(free_at);
    while (!port_latched()) {
    }
}

static uint16_t more(uint16_t one, uint16_t other)
{
    return one > other ? one : other;
}

void port_cut(const struct port_run *cut, uint8_t count)
{
    for (uint32_t i = 0; i < OUTPUTS; i++) {
        outputs[i].lit = more(outputs[i].lit, outputs[i].driven);
        outputs[i].length = 0;
    }
    if (count == 0) {
        static const struct port_run whole = { 0, STORE_BYTES };
        port_cut(&whole, 1);
        return;
    }
    runs = count;
    for (uint8_t i = 0; i < count; i++) {
        order[i] = cut[i].output;
        outputs[cut[i].output].length = cut[i].bytes;
    }
}

/* Distributes a frame over the runs. Returns the largest number of bytes that one data line must be driven. */
static uint16_t share_out(const uint8_t *bytes, uint16_t length)
{
    uint16_t longest = 0;
    for (uint8_t i = 0; i < OUTPUTS; i++)
        outputs[i].share = 0;
    for (uint8_t i = 0; i < runs; i++) {
        struct output *output = &outputs[order[i]];
        output->from = bytes;
        output->share = output->length < length ? output->length : length;
        bytes += output->share;
        length = (uint16_t)(length - output->share);
    }
    for (uint8_t i = 0; i < OUTPUTS; i++)
        longest = more(longest, more(outputs[i].share, outputs[i].lit));
    return longest;
}

/* Fills a data line's buffer with its share, padded with darkness. Returns its bit if there is anything to drive. */
static uint32_t fill(uint32_t index, uint16_t longest)
{
    struct output *output = &outputs[index];
    bool dark = output->share == 0 && output->lit == 0;
    output->lit = 0;
    output->driven = output->share;
    if (dark)
        return 0;
    memcpy(output->bytes, output->from, output->share);
    memset(output->bytes + output->share, 0, longest - output->share);
    DMA_READ_ADDR(index) = (uint32_t)(uintptr_t)output->bytes;
    DMA_TRANS_COUNT(index) = longest;
    return 1u << index;
}

/*
 * Every data line is driven for as long as the longest, with darkness past its end, so that the whole strip latches at once: one run in its
 * new state and another in its old one may together exceed the ceiling.
 */
void port_strip(const uint8_t *bytes, uint16_t length)
{
    uint32_t started = 0;
    if (length == 0)
        return;
    strip_wait();
    uint16_t longest = share_out(bytes, length);
    for (uint32_t i = 0; i < OUTPUTS; i++)
        started |= fill(i, longest);
    DMA_TRIGGER = started;
    free_at = clock_us() + longest * BYTE_US + RESET_US;
    latched = false;
}
