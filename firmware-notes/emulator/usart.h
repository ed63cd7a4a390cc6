#ifndef LAMPWRIGHT_USART_H
#define LAMPWRIGHT_USART_H

#include <stdbool.h>
#include <stdint.h>

#include <sim_avr.h>
#include <avr_uart.h>

#include "turn.h"

/*
 * USART0 of the ATmega328P as its datasheet describes it (chapter "USART0", asynchronous modes): a receive buffer of two
 * characters behind a shift register, data overrun, a transmit buffer of one character before a shift register, and the
 * three interrupts held for as long as their flag is set. It takes the place of the simulator's own, whose buffer is
 * deeper than the chip's and whose byte is 11 bits long.
 *
 * Not modelled: nine data bits, parity and framing errors, synchronous and SPI modes, multi-processor mode.
 */

enum usart_loss {
    USART_OVERRUN,                      /* the buffer was full: the byte waiting in the shift register is lost */
    USART_RECEIVER_OFF,                 /* the firmware had turned the receiver off again */
    USART_STARTING,                     /* at the start bit the firmware had neither read nor sent a byte since the reset */
};

struct usart_events {
    void (*sent)(void *context, uint8_t byte);
    /* A byte from the line was lost. `hurt`: it, or one that filled the buffer, was deliberate trouble. */
    void (*lost)(void *context, enum usart_loss loss, uint8_t byte, bool hurt);
    /* The transmitter has nothing left to send. */
    void (*idle)(void *context);
    void (*reset)(void *context);
    void *context;
};

struct usart_character {
    uint8_t byte;
    bool hurt;
    avr_cycle_count_t came;
};

struct usart {
    avr_t *avr;
    avr_uart_t *part;                   /* the simulator's, for its vectors */
    struct usart_events events;

    struct usart_character buffer[2];
    unsigned buffered;
    struct usart_character shift;
    bool shift_full;
    bool is_receiving;                  /* the receiver was on at the last start bit */
    bool was_starting;                  /* at the last start bit the firmware had not started */
    bool has_started;                   /* the firmware has read or sent a byte since the reset */

    uint8_t sending;
    bool is_sending;
    uint8_t next;
    bool next_full;

    avr_cycle_count_t longest_wait;     /* from the end of a byte's stop bit until it was read */
    struct turn turn;
};

/* Takes over the chip's USART0. False if the chip has none. Calls events.reset at each reset of the chip. */
bool usart_attach(struct usart *usart, avr_t *avr, struct usart_events events);

/* Length of a character on the line, including start and stop bits, as the registers are set. */
avr_cycle_count_t usart_character_cycles(const struct usart *usart);

/* Length of a bit, in cycles. */
avr_cycle_count_t usart_bit_cycles(const struct usart *usart);

bool usart_listens(const struct usart *usart);

/* The start bit of a character arrived; `hurt` as in usart_receive. */
void usart_start_bit(struct usart *usart, bool hurt);

/* The stop bit of a character ended. `hurt`: it was created or changed by deliberate trouble. */
void usart_receive(struct usart *usart, uint8_t byte, bool hurt);

#endif
