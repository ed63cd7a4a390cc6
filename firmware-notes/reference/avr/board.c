/** The ATmega328P: start, watchdog and main loop. */
#include <avr/eeprom.h>
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/wdt.h>

#include "clock.h"
#include "controller.h"
#include "dimmers.h"
#include "port.h"
#include "strip.h"
#include "uart.h"

/* Where the EEPROM holds the board's id. */
#define ID_ADDRESS 0

/* The contents of an EEPROM that was never written. */
#define ERASED 0xFF

static struct controller controller;

/* MCUSR at the chip's start, and the value that a bootloader that clears it passes in r2 (Optiboot from 4.6 on does). */
static uint8_t causes __attribute__((section(".noinit"), used));
static uint8_t passed_on __attribute__((section(".noinit"), used));

/* The watchdog stays armed across the reset that it causes; this disarms it before it can strike again. */
__attribute__((naked, used, section(".init3"))) void disarm(void)
{
    __asm__ volatile("sts %0, r2" : : "i"(&passed_on) : "memory");
    causes = MCUSR;
    MCUSR = 0;
    wdt_disable();
}

void port_id(uint8_t id[PORT_ID_BYTES])
{
    uint8_t all = ERASED;
    eeprom_read_block(id, (const void *)ID_ADDRESS, PORT_ID_BYTES);
    for (uint8_t i = 0; i < PORT_ID_BYTES; i++)
        all &= id[i];
    if (all == ERASED)
        for (uint8_t i = 0; i < PORT_ID_BYTES; i++)
            id[i] = 0;
}

/* A bootloader may end through the watchdog, so that flag counts only on its own. */
enum port_reset port_last_reset(void)
{
    uint8_t flags = causes != 0 || passed_on > 15 ? causes : passed_on;
    if (flags & _BV(PORF))
        return PORT_RESET_POWER;
    if (flags & _BV(BORF))
        return PORT_RESET_BROWN_OUT;
    if (flags & _BV(EXTRF))
        return PORT_RESET_BUTTON;
    return flags & _BV(WDRF) ? PORT_RESET_WATCHDOG : PORT_RESET_UNKNOWN;
}

int main(void)
{
    clock_start();
    dimmers_start();
    strip_start();
    wdt_enable(WDTO_250MS);
    sei();
    controller_start(&controller);
    uart_start();
    controller_greet();
    for (;;) {
        wdt_reset();
        uint8_t *bytes;
        uint8_t count = uart_waiting(&bytes);
        if (count > 0) {
            controller_take(&controller, bytes, count);
            uart_drop(count);
        } else if (uart_lost() && uart_waiting(&bytes) == 0) {
            controller_overrun(&controller);
            uart_resume();
        }
        if (clock_ticked())
            controller_tick(&controller, clock_ms());
    }
}
