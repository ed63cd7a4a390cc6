/* A firmware for the tests of the emulated board: reads a word at an odd address. A real chip would fault; the board must report it. */
#include <stdint.h>

void start(void);

extern uint32_t stack_top[];

__attribute__((section(".start"))) void start(void)
{
    uint32_t at = 0x20000001;
    __asm__ volatile("ldr %0, [%0]" : "+l"(at)); /* the C compiler would read it by bytes */
    for (;;)
        __asm__ volatile("wfi");
}

__attribute__((section(".start_vectors"), used)) static void *const vectors[2] = { stack_top, (void *)start };
