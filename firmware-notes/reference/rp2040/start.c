/**
 * From the second boot stage to main: copies the program from flash to RAM, where it runs from then on, and clears the variables. So no
 * instruction waits for the flash.
 */
#include <stdint.h>

#include "interrupts.h"
#include "rp2040.h"

/* Of link.ld. */
extern uint32_t ram_begin[], ram_end[], ram_image[], variables_begin[], variables_end[], stack_top[];

typedef void handler(void);

void start(void);

/* Longer than a branch can reach: from flash to RAM. */
__attribute__((long_call)) int main(void);

__attribute__((section(".start"), noreturn)) void start(void)
{
    const volatile uint32_t *from = ram_image;
    for (volatile uint32_t *to = ram_begin; to < ram_end; to++)
        *to = *from++;
    for (volatile uint32_t *to = variables_begin; to < variables_end; to++)
        *to = 0;
    VTOR = (uint32_t)(uintptr_t)ram_begin;
    main();
    for (;;) {
    }
}

/* An interrupt without a handler stops here; the watchdog ends that. */
static void stand_still(void)
{
    for (;;) {
    }
}

/* Only the stack and the start address: interrupts occur only once the table below is in force. */
__attribute__((section(".start_vectors"), used)) static handler *const start_vectors[2] = {
    (handler *)(void *)stack_top,
    start,
};

/* VTOR takes multiples of 256 (ARMv6-M, "VTOR"): this table is the first thing in RAM. */
__attribute__((section(".vectors"), used)) static handler *const vectors[48] = {
    (handler *)(void *)stack_top,
    start,
    stand_still,
    stand_still,
    [11] = stand_still,
    [14] = stand_still,
    [15] = on_tick,
    [16 + IRQ_TIMER0] = on_alarm,
    [16 + IRQ_USBCTRL] = on_usb,
    [16 + IRQ_UART0] = on_uart,
};
