/**
 * The ATmega328P: what starts it, what watches over it, and its loop.
 */
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

/* Where the EEPROM holds the id of the board. */
#define ID_ADDRESS 0

/* What an EEPROM that was never written reads as. */
#define ERASED 0xFF

static struct controller controller;

/* The watchdog stays armed over the reset it makes; it is disarmed before it can strike again. */
__attribute__((naked, used, section(".init3"))) void disarm(void)
{
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
