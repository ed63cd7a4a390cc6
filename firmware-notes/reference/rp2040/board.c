/** The RP2040: start, watchdog and main loop. */
#include <string.h>

#include "clock.h"
#include "controller.h"
#include "dimmers.h"
#include "flash.h"
#include "line.h"
#include "port.h"
#include "rp2040.h"
#include "strip.h"

/* A program that arms the watchdog leaves this where only power-on and the reset line clear it (4.7, "Scratch register"). */
#define OWN_WATCHDOG 0x6C616D70u

/* The watchdog counts down twice per microsecond (datasheet, erratum RP2040-E1). */
#define WATCHDOG_US 250000u

#define USED (RESET_DMA | RESET_IO_BANK0 | RESET_PADS_BANK0 | RESET_PIO0 | RESET_PIO1 | RESET_PWM)

static struct controller controller;
static uint8_t own_id[PORT_ID_BYTES];
static enum port_reset cause;

void port_id(uint8_t id[PORT_ID_BYTES])
{
    memcpy(id, own_id, PORT_ID_BYTES);
}

enum port_reset port_last_reset(void)
{
    return cause;
}

/*
 * What the chip reports (datasheet 2.12.7 and 4.7). Its brown-out detector counts as power-on there. The ROM also restarts the chip through
 * the watchdog, once a file has been copied onto it; only our own program leaves its mark.
 */
static enum port_reset read_cause(void)
{
    bool bitten = (WATCHDOG_REASON & WATCHDOG_REASON_TIMER) != 0 && WATCHDOG_SCRATCH0 == OWN_WATCHDOG;
    uint32_t chip = CHIP_RESET;
    if (bitten)
        return PORT_RESET_WATCHDOG;
    if (chip & HAD_POWER_ON)
        return PORT_RESET_POWER;
    return chip & HAD_RUN_PIN ? PORT_RESET_BUTTON : PORT_RESET_UNKNOWN;
}

static void leave_reset(void)
{
    CLEAR_BITS(RESETS) = USED;
    while ((REG(RESETS_DONE) & USED) != USED) {
    }
}

/* A watchdog reset reaches everything but the oscillators, like a reset by the button. */
static void start_watchdog(void)
{
    WATCHDOG_SCRATCH0 = OWN_WATCHDOG;
    REG(PSM_WDSEL) = PSM_ALL & ~(PSM_ROSC | PSM_XOSC);
    WATCHDOG_LOAD = 2 * WATCHDOG_US;
    WATCHDOG_CTRL = WATCHDOG_ENABLE;
}

static void take_bytes(void)
{
    uint8_t *bytes;
    bool lost = line_lost();
    uint8_t count = line_waiting(&bytes);
    if (count > 0)
        controller_take(&controller, bytes, count);
    line_drop(count);
    if (lost && count == 0) {
        controller_overrun(&controller);
        line_resume();
    }
}

/* Until a byte arrives, a host appears, or the next millisecond. Anything that arrives in between ends the sleep at once. */
static void sleep_a_while(void)
{
    uint8_t *bytes;
    interrupts_off();
    if (line_waiting(&bytes) == 0 && !line_lost())
        sleep();
    interrupts_on();
}

int main(void)
{
    uint32_t told_ms = 0;
    cause = read_cause();
    clock_start();
    leave_reset();
    dimmers_start();
    strip_start();
    flash_id(own_id);
    start_watchdog();
    clock_tick();
    controller_start(&controller);
    strip_wait();
    line_start(own_id);
    for (;;) {
        WATCHDOG_LOAD = 2 * WATCHDOG_US;
        take_bytes();
        if (line_opened())
            controller_greet();
        uint32_t ms = clock_ms();
        if (ms != told_ms)
            controller_tick(&controller, ms);
        told_ms = ms;
        sleep_a_while();
    }
}
