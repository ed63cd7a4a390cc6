#include "uart.h"

#include <avr/interrupt.h>
#include <avr/io.h>

#include "port.h"

/* The divisor for `cycles` clock cycles per bit, rounded (datasheet section 20.3.1). */
#define DIVISOR(cycles) ((F_CPU + (cycles) * BAUD / 2) / ((cycles) * BAUD))
#define MISS(cycles) (F_CPU > (cycles) * BAUD * DIVISOR(cycles) ? F_CPU - (cycles) * BAUD * DIVISOR(cycles) \
                                                                : (cycles) * BAUD * DIVISOR(cycles) - F_CPU)

/* Sixteen samples per bit tolerate noise better; use eight only where they match the rate better. */
#define DOUBLE (MISS(8UL) < MISS(16UL))
#define CYCLES (DOUBLE ? 8UL : 16UL)

_Static_assert(MISS(CYCLES) * 40 <= F_CPU, "BAUD is more than 2.5 % off at this clock; see the table in README.md");
_Static_assert(BAUD <= 1000000UL, "BAUD is more than the decoder keeps up with, 1000000");
/* The answer to the largest set-up, 67 bytes, must be sent within the watchdog's 250 ms. */
_Static_assert(BAUD >= 4800UL, "BAUD is less than 4800: the watchdog would strike in the middle of an answer");
_Static_assert(DIVISOR(CYCLES) <= 4096, "BAUD is less than the divisor reaches");

/* The ring. Its indices are in general purpose registers, which take one cycle to access; flag 0 of GPIOR0 marks a loss. */
#define RING_BYTES 128
#define HEAD GPIOR1
#define TAIL GPIOR2
#define LOST 0

static uint8_t ring[RING_BYTES];

/* The line's control register without the receive interrupt, and with it. */
#define DEAF (_BV(RXEN0) | _BV(TXEN0))
#define HEARING (DEAF | _BV(RXCIE0))

/*
 * Puts a byte into the ring. If bytes were lost, it notes that and turns itself off: everything in the ring then came before the loss, and
 * everything added after uart_resume came after it. At 1 000 000 baud a byte arrives every 160 cycles; this takes 48 of them, from the
 * request to the end of RETI, and 61 when written in C.
 */
ISR(USART_RX_vect, ISR_NAKED)
{
    __asm__ volatile(
        "push r24                  \n"
        "in   r24, __SREG__        \n"
        "push r24                  \n"
        "push r30                  \n"
        "push r31                  \n"
        "lds  r24, %[status]       \n" /* before the data: reading that clears it */
        "sbrc r24, %[overrun]      \n"
        "rjmp lost%=               \n"
        "lds  r24, %[data]         \n"
        "in   r30, %[head]         \n"
        "ldi  r31, 0               \n"
        "subi r30, lo8(-(%[ring])) \n"
        "sbci r31, hi8(-(%[ring])) \n"
        "st   Z, r24               \n"
        "in   r24, %[head]         \n"
        "inc  r24                  \n"
        "andi r24, %[mask]         \n"
        "in   r30, %[tail]         \n"
        "cp   r24, r30             \n"
        "breq lost%=               \n"
        "out  %[head], r24         \n"
        "done%=:                   \n"
        "pop  r31                  \n"
        "pop  r30                  \n"
        "pop  r24                  \n"
        "out  __SREG__, r24        \n"
        "pop  r24                  \n"
        "reti                      \n"
        "lost%=:                   \n"
        "sbi  %[flags], %[lost]    \n"
        "ldi  r24, %[deaf]         \n"
        "sts  %[control], r24      \n"
        "rjmp done%=               \n"
        :
        : [status] "n"(_SFR_MEM_ADDR(UCSR0A)), [overrun] "n"(DOR0), [data] "n"(_SFR_MEM_ADDR(UDR0)),
          [control] "n"(_SFR_MEM_ADDR(UCSR0B)), [deaf] "M"(DEAF), [flags] "I"(_SFR_IO_ADDR(GPIOR0)), [lost] "I"(LOST), [head] "I"(_SFR_IO_ADDR(HEAD)),
          [tail] "I"(_SFR_IO_ADDR(TAIL)), [mask] "M"(RING_BYTES - 1), [ring] "i"(ring));
}

void uart_start(void)
{
    HEAD = 0;
    TAIL = 0;
    PORTD |= _BV(0);
    UBRR0 = DIVISOR(CYCLES) - 1;
    UCSR0A = DOUBLE ? _BV(U2X0) : 0;
    UCSR0C = _BV(UCSZ01) | _BV(UCSZ00);
    UCSR0B = HEARING;
}

uint8_t uart_waiting(uint8_t **bytes)
{
    uint8_t head = HEAD;
    uint8_t tail = TAIL;
    __asm__ volatile("" ::: "memory"); /* what the interrupt wrote before it moved HEAD is visible now */
    *bytes = ring + tail;
    return (uint8_t)((head < tail ? RING_BYTES : head) - tail);
}

void uart_drop(uint8_t count)
{
    TAIL = (TAIL + count) & (RING_BYTES - 1);
}

bool uart_lost(void)
{
    return GPIOR0 & _BV(LOST);
}

/* What the hardware still holds may have come before the bytes that it lost. */
void uart_resume(void)
{
    while (UCSR0A & _BV(RXC0))
        (void)UDR0;
    GPIOR0 &= (uint8_t)~_BV(LOST);
    UCSR0B = HEARING;
}

void port_send(uint8_t byte)
{
    while (!(UCSR0A & _BV(UDRE0))) {
    }
    UDR0 = byte;
}
