#include "usart.h"

#include <stddef.h>

#include <sim_io.h>

#include "part.h"

/* Addresses in data memory and bits, ATmega328P datasheet, USART register description. */
enum { UCSR0A = 0xc0, UCSR0B = 0xc1, UCSR0C = 0xc2, UBRR0L = 0xc4, UBRR0H = 0xc5, UDR0 = 0xc6 };
enum { TXC0 = 1 << 6, DOR0 = 1 << 3, U2X0 = 1 << 1, MPCM0 = 1 << 0 };
enum { RXEN0 = 1 << 4, TXEN0 = 1 << 3 };
enum { UPM01 = 1 << 5, USBS0 = 1 << 3 };

static bool is_queued(avr_t *avr, const avr_int_vector_t *vector)
{
    const avr_int_pending_t *queue = &avr->interrupts.pending;
    for (unsigned i = queue->read; i != queue->write; i = (i + 1) % avr_int_pending_fifo_size)
        if (queue->buffer[i] == vector)
            return true;
    return false;
}

/* What avr_raise_interrupt does for a vector that is still in the simulator's queue from an earlier request. */
static void ask_again(avr_t *avr, avr_int_vector_t *vector)
{
    vector->pending = 1;
    if (avr->sreg[S_I] && avr->interrupt_state == 0)
        avr->interrupt_state = 1;
    if (avr->state == cpu_Sleeping)
        avr->state = cpu_Running;
}

/* The request of a level-triggered interrupt is active while its flag and its enable bit are both set. */
static void update_request(avr_t *avr, avr_int_vector_t *vector)
{
    if (!avr_regbit_get(avr, vector->raised) || !avr_regbit_get(avr, vector->enable))
        vector->pending = 0;
    else if (is_queued(avr, vector))
        ask_again(avr, vector);
    else
        avr_raise_interrupt(avr, vector);
}

static void set_flag(struct usart *usart, avr_int_vector_t *vector, bool on)
{
    avr_regbit_setto(usart->avr, vector->raised, on);
    update_request(usart->avr, vector);
}

static void update_received(struct usart *usart)
{
    set_flag(usart, &usart->part->rxc, usart->buffered > 0);
}

static void update_room(struct usart *usart)
{
    set_flag(usart, &usart->part->udrc, !usart->next_full);
}

/* The simulator has just dropped the request because it serves it: it comes again while the flag stays set. */
static void served(struct avr_irq_t *irq, uint32_t value, void *param)
{
    struct usart *usart = param;
    if (value != 0)
        return;
    if (irq == usart->part->rxc.irq + AVR_INT_IRQ_PENDING)
        update_request(usart->avr, &usart->part->rxc);
    else
        update_request(usart->avr, &usart->part->udrc);
}

static void flush_receiver(struct usart *usart)
{
    usart->buffered = 0;
    usart->shift_full = false;
    usart->avr->data[UCSR0A] &= (uint8_t)~DOR0;
    update_received(usart);
}

static void fill_buffer(struct usart *usart)
{
    if (!usart->shift_full || usart->buffered == 2)
        return;
    usart->buffer[usart->buffered++] = usart->shift;
    usart->shift_full = false;
}

static uint8_t read_data(avr_t *avr, avr_io_addr_t address, void *param)
{
    struct usart *usart = param;
    if (usart->buffered == 0)
        return avr->data[address];
    usart->has_started = true;
    struct usart_character read = usart->buffer[0];
    usart->buffer[0] = usart->buffer[1];
    usart->buffered--;
    fill_buffer(usart);
    if (avr->cycle - read.came > usart->longest_wait)
        usart->longest_wait = avr->cycle - read.came;
    avr->data[UCSR0A] &= (uint8_t)~DOR0;
    update_received(usart);
    return read.byte;
}

static avr_cycle_count_t sent(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct usart *usart = param;
    turn_spoke(&usart->turn, when);
    usart->events.sent(usart->events.context, usart->sending);
    if (usart->next_full) {
        usart->sending = usart->next;
        usart->next_full = false;
        update_room(usart);
        return when + usart_character_cycles(usart);
    }
    usart->is_sending = false;
    avr_raise_interrupt(avr, &usart->part->txc);
    usart->events.idle(usart->events.context);
    return 0;
}

static void write_data(avr_t *avr, avr_io_addr_t address, uint8_t value, void *param)
{
    struct usart *usart = param;
    (void)address;
    if (!(avr->data[UCSR0B] & TXEN0) || usart->next_full)
        return;
    usart->has_started = true;
    if (usart->is_sending) {
        usart->next = value;
        usart->next_full = true;
        update_room(usart);
        return;
    }
    usart->sending = value;
    usart->is_sending = true;
    avr_cycle_timer_register(avr, usart_character_cycles(usart), sent, usart);
}

static void write_control_a(avr_t *avr, avr_io_addr_t address, uint8_t value, void *param)
{
    struct usart *usart = param;
    uint8_t writable = U2X0 | MPCM0;
    uint8_t kept = avr->data[address] & (uint8_t)~writable;
    avr->data[address] = kept | (value & writable);
    if (value & TXC0) {
        avr_regbit_clear(avr, usart->part->txc.raised);
        usart->part->txc.pending = 0;
    }
}

static void write_control_b(avr_t *avr, avr_io_addr_t address, uint8_t value, void *param)
{
    struct usart *usart = param;
    bool listened = usart_listens(usart);
    avr->data[address] = value;
    if (listened && !usart_listens(usart))
        flush_receiver(usart);
    update_received(usart);
    update_room(usart);
}

/* Register values after reset, ATmega328P datasheet, USART register description. */
static void reset(avr_io_t *io)
{
    avr_t *avr = io->avr;
    struct usart *usart = avr->io[AVR_DATA_TO_IO(UDR0)].r.param;
    avr->data[UCSR0A] = 1 << 5;
    avr->data[UCSR0B] = 0;
    avr->data[UCSR0C] = 3 << 1;
    usart->buffered = 0;
    usart->shift_full = false;
    usart->has_started = false;
    usart->is_receiving = false;
    usart->is_sending = false;
    usart->next_full = false;
    turn_break(&usart->turn);
    usart->events.reset(usart->events.context);
}

static void take_register(struct usart *usart, avr_io_addr_t address, avr_io_read_t read, avr_io_write_t write)
{
    avr_io_addr_t io = AVR_DATA_TO_IO(address);
    usart->avr->io[io].r.c = read;
    usart->avr->io[io].r.param = usart;
    usart->avr->io[io].w.c = write;
    usart->avr->io[io].w.param = usart;
}

bool usart_attach(struct usart *usart, avr_t *avr, struct usart_events events)
{
    avr_io_t *io = part_find(avr, "uart");
    if (io == NULL)
        return false;
    *usart = (struct usart){.avr = avr, .part = (avr_uart_t *)io, .events = events};
    take_register(usart, UCSR0A, NULL, write_control_a);
    take_register(usart, UCSR0B, NULL, write_control_b);
    take_register(usart, UBRR0L, NULL, NULL);
    take_register(usart, UBRR0H, NULL, NULL);
    take_register(usart, UDR0, read_data, write_data);
    io->reset = reset;
    avr_irq_register_notify(usart->part->rxc.irq + AVR_INT_IRQ_PENDING, served, usart);
    avr_irq_register_notify(usart->part->udrc.irq + AVR_INT_IRQ_PENDING, served, usart);
    return true;
}

/* ATmega328P datasheet, "Equations for Calculating Baud Rate Register Setting". */
avr_cycle_count_t usart_bit_cycles(const struct usart *usart)
{
    const uint8_t *data = usart->avr->data;
    avr_cycle_count_t divisor = (data[UBRR0L] | (data[UBRR0H] & 15) << 8) + 1;
    return divisor * (data[UCSR0A] & U2X0 ? 8 : 16);
}

avr_cycle_count_t usart_character_cycles(const struct usart *usart)
{
    uint8_t format = usart->avr->data[UCSR0C];
    unsigned data_bits = 5 + (format >> 1 & 3);
    unsigned parity_bits = format & UPM01 ? 1 : 0;
    unsigned stop_bits = format & USBS0 ? 2 : 1;
    return (1 + data_bits + parity_bits + stop_bits) * usart_bit_cycles(usart);
}

bool usart_listens(const struct usart *usart)
{
    return usart->avr->data[UCSR0B] & RXEN0;
}

static void lose(struct usart *usart, enum usart_loss loss, uint8_t byte, bool hurt)
{
    usart->events.lost(usart->events.context, usart->was_starting ? USART_STARTING : loss, byte, hurt);
}

/*
 * "A Data OverRun occurs when the receive buffer is full (two characters), it is a new character waiting in the Receive
 * Shift Register, and a new start bit is detected": ATmega328P datasheet, UCSRnA.
 */
void usart_start_bit(struct usart *usart, bool hurt)
{
    usart->is_receiving = usart_listens(usart);
    usart->was_starting = !usart->has_started;
    if (!usart->shift_full)
        return;
    usart->avr->data[UCSR0A] |= DOR0;
    usart->shift_full = false;
    hurt = hurt || usart->shift.hurt || usart->buffer[0].hurt || usart->buffer[1].hurt;
    lose(usart, USART_OVERRUN, usart->shift.byte, hurt);
}

void usart_receive(struct usart *usart, uint8_t byte, bool hurt)
{
    if (!usart_listens(usart) || !usart->is_receiving) {
        lose(usart, USART_RECEIVER_OFF, byte, hurt);
        return;
    }
    turn_heard(&usart->turn, usart->avr->cycle);
    usart->shift = (struct usart_character){byte, hurt, usart->avr->cycle};
    usart->shift_full = true;
    fill_buffer(usart);
    update_received(usart);
}
