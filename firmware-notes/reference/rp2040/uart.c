/** The line over a UART: GP0 out, GP1 in, 8 data bits, no parity, one stop bit, at BAUD. */
#include "clock.h"
#include "interrupts.h"
#include "line.h"
#include "pins.h"
#include "ring.h"
#include "rp2040.h"

/* The divisor in 64ths, rounded (datasheet 4.2.7.1). */
#define DIVISOR ((CLOCK_HZ * 4ull + BAUD / 2) / BAUD)

_Static_assert(BAUD >= 4800 && BAUD <= 3000000, "BAUD is 4800 to 3000000");

#define EIGHT_BITS_AND_FIFOS (3u << 5 | 1u << 4)
#define ON_BOTH_WAYS (1u << 9 | 1u << 8 | 1u << 0)
#define HALF_FULL (2u << 3)
#define RECEIVED_OR_SILENT (1u << 4 | 1u << 6)

static struct ring ring;
static volatile bool lost;
static bool greeted;

void line_start(const uint8_t id[PORT_ID_BYTES])
{
    (void)id;
    CLEAR_BITS(RESETS) = RESET_UART0;
    while (!(REG(RESETS_DONE) & RESET_UART0)) {
    }
    UART_IBRD = DIVISOR / 64;
    UART_FBRD = DIVISOR % 64;
    UART_LCR_H = EIGHT_BITS_AND_FIFOS;
    UART_IFLS = HALF_FULL;
    UART_IMSC = RECEIVED_OR_SILENT;
    UART_CR = ON_BOTH_WAYS;
    GPIO_CTRL(UART_OUT_PIN) = FUNCTION_UART;
    GPIO_CTRL(UART_IN_PIN) = FUNCTION_UART;
    NVIC_ISER = 1u << IRQ_UART0;
}

/* If bytes were lost before this one, it belongs to what follows the loss, and is lost too. */
void on_uart(void)
{
    UART_ICR = RECEIVED_OR_SILENT;
    while (!lost && !(UART_FR & UART_FR_RX_EMPTY)) {
        uint32_t came = UART_DR;
        lost = came & UART_DR_OVERRUN || ring_room(&ring) == 0;
        if (!lost)
            ring_put(&ring, (uint8_t)came);
    }
    if (lost)
        UART_IMSC = 0;
}

void on_usb(void)
{
}

/* Opening a UART cannot be detected: the host is greeted once. */
bool line_opened(void)
{
    bool first = !greeted;
    greeted = true;
    return first;
}

uint8_t line_waiting(uint8_t **bytes)
{
    return ring_waiting(&ring, bytes);
}

void line_drop(uint8_t count)
{
    ring_drop(&ring, count);
}

bool line_lost(void)
{
    return lost;
}

void line_resume(void)
{
    while (!(UART_FR & UART_FR_RX_EMPTY))
        (void)UART_DR;
    lost = false;
    UART_IMSC = RECEIVED_OR_SILENT;
}

void port_send(uint8_t byte)
{
    while (UART_FR & UART_FR_TX_FULL) {
    }
    UART_DR = byte;
}
