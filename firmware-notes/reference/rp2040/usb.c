/**
 * The line over USB: a serial port of the communications device class (CDC 1.2, abstract control model), at full speed. There is no baud
 * rate and no bridge chip, and no byte is lost: if the ring is full, the host waits.
 *
 * What the chip does and what it leaves to the program: RP2040 datasheet 4.1. What a device must answer: USB 2.0, chapter 9.
 */
#include <stddef.h>
#include <string.h>

#include "interrupts.h"
#include "line.h"
#include "ring.h"
#include "rp2040.h"

/* Endpoints: bytes from the host, bytes to the host, and one that the class requires and nobody uses. */
#define FROM_HOST 1u
#define TO_HOST 2u
#define NOTICES 3u
#define PACKET 64u

/* The memory shared with the controller (4.1.2.5): the set-up packet, controls, then the buffers in the order given here. */
#define SETUP_PACKET (USB_DPRAM + 0x000u)
#define CONTROL_IN(endpoint) REG(USB_DPRAM + 8u * (endpoint))
#define CONTROL_OUT(endpoint) REG(USB_DPRAM + 8u * (endpoint) + 4u)
#define BUFFER_IN(endpoint) (USB_DPRAM + 0x80u + 8u * (endpoint))
#define BUFFER_OUT(endpoint) (USB_DPRAM + 0x84u + 8u * (endpoint))
#define AT_CONTROL 0x100u
#define AT_FROM_HOST 0x180u /* two buffers */
#define AT_TO_HOST 0x200u
#define AT_NOTICES 0x240u
#define SHARED_BYTES 0x280u

/* Endpoint control. */
#define ENABLED (1u << 31)
#define TWO_BUFFERS (1u << 30)
#define TELL_EACH (1u << 29)
#define BULK (2u << 26)
#define INTERRUPT (3u << 26)

/* One half of a buffer control register. */
#define FULL (1u << 15)
#define DATA1 (1u << 13)
#define STALL (1u << 11)
#define AVAILABLE (1u << 10)
#define LENGTH 0x3FFu

/* Bits of USB_BUFF_STATUS. */
#define STATUS_IN(endpoint) (1u << (2 * (endpoint)))
#define STATUS_OUT(endpoint) (2u << (2 * (endpoint)))

/* Interrupts, and the SIE_STATUS bits cleared for each. */
#define ON_SETUP (1u << 16)
#define ON_BUS_RESET (1u << 12)
#define ON_BUFFER (1u << 4)
#define SIE_SETUP (1u << 17)
#define SIE_BUS_RESET (1u << 19)

/* Requests: request type and request (USB 2.0 table 9-3, CDC 1.2 and its PSTN subclass 1.2). */
enum {
    GET_STATUS_DEVICE = 0x8000,
    GET_STATUS_INTERFACE = 0x8100,
    GET_STATUS_ENDPOINT = 0x8200,
    SET_ADDRESS = 0x0005,
    GET_DESCRIPTOR = 0x8006,
    GET_CONFIGURATION = 0x8008,
    SET_CONFIGURATION = 0x0009,
    GET_INTERFACE = 0x810A,
    SET_INTERFACE = 0x010B,
    CLEAR_ENDPOINT_FEATURE = 0x0201,
    SET_LINE_CODING = 0x2120,
    GET_LINE_CODING = 0xA121,
    SET_CONTROL_LINE_STATE = 0x2122,
    SEND_BREAK = 0x2123,
};

#define DESCRIPTOR_DEVICE 1
#define DESCRIPTOR_CONFIGURATION 2
#define DESCRIPTOR_STRING 3

/* The numbers that pid.codes provides for tests: a product needs its own. */
#define VENDOR 0x1209
#define PRODUCT 0x0001

#define TWO(number) (number) & 0xFF, (number) >> 8

static const uint8_t device_descriptor[] = {
    18, DESCRIPTOR_DEVICE, TWO(0x0200), 2, 0, 0, PACKET, TWO(VENDOR), TWO(PRODUCT), TWO(0x0100), 1, 2, 3, 1,
};

#define CONFIGURATION_BYTES 67

static const uint8_t configuration_descriptor[CONFIGURATION_BYTES] = {
    9, DESCRIPTOR_CONFIGURATION, TWO(CONFIGURATION_BYTES), 2, 1, 0, 0x80, 250, /* two interfaces, bus powered, 500 mA */
    9, 4, 0, 0, 1, 2, 2, 0, 0,                      /* interface 0: communications, abstract control model */
    5, 0x24, 0x00, TWO(0x0120),                     /* header: CDC 1.2 */
    5, 0x24, 0x01, 0, 1,                            /* calls: none, data on interface 1 */
    4, 0x24, 0x02, 2,                               /* line coding and control line state */
    5, 0x24, 0x06, 0, 1,                            /* union of interfaces 0 and 1 */
    7, 5, 0x80 | NOTICES, 3, TWO(8), 255,           /* interrupt, every 255 ms */
    9, 4, 1, 0, 2, 10, 0, 0, 0,                     /* interface 1: data */
    7, 5, FROM_HOST, 2, TWO(PACKET), 0,             /* bulk */
    7, 5, 0x80 | TO_HOST, 2, TWO(PACKET), 0,
};

static const char *const strings[] = { "Lampwright", "RP2040 controller" };
#define SERIAL_STRING (1 + sizeof strings / sizeof strings[0])
#define ENGLISH 0x0409

/* Line coding (CDC PSTN 1.2 table 17): stored and reported, but without effect. 115200 baud, 8 data bits. */
#define CODING_BYTES 7
static uint8_t coding[CODING_BYTES] = { TWO(0xC200), 1, 0, 0, 0, 8 };

/* The state of the control endpoint. */
enum control {
    CONTROL_IDLE,
    CONTROL_SENDING, /* an answer, and then the host's empty packet */
    CONTROL_CODING,  /* line coding is expected */
    CONTROL_DONE,    /* the empty packet that ends a request without an answer */
};

static struct {
    uint8_t control;
    uint8_t address;     /* takes effect once the request is over; 0 for none */
    bool configured;
    bool open;           /* a program on the host has the port open (control line state, DTR) */
    bool opened;         /* since the last call of line_opened */
    uint32_t control_pid;
    const uint8_t *from; /* the rest of the answer at the control endpoint */
    uint16_t left;
    bool ends_short;     /* it ends with a packet that is not full */
} state;

/* Bytes to the host: the loop puts them in, packets take them out. Bytes that do not fit are lost: nobody is reading then. */
#define SEND_BYTES 1024u
static uint8_t sending[SEND_BYTES];
static volatile uint32_t sending_head, sending_tail;
static bool sending_busy;
static bool sent_full;       /* the last packet was full: unless more follows, an empty one marks the end */
static uint32_t sending_pid;

static struct ring ring;
static uint32_t taking_half;    /* which of the two buffers from the host is expected next */
static uint32_t offering_half;  /* which is offered next */
static uint32_t offered;        /* how many of the two are offered, or received and not yet processed */
static uint32_t offering_pid;

static uint8_t own_id[PORT_ID_BYTES];
static uint8_t text[2 + 2 * 32] __attribute__((aligned(4)));

static void copy_out(uint32_t at, const uint8_t *bytes, uint32_t count)
{
    for (uint32_t i = 0; i < count; i += 4) {
        uint32_t word = 0;
        for (uint32_t byte = 0; byte < 4 && i + byte < count; byte++)
            word |= (uint32_t)bytes[i + byte] << 8 * byte;
        REG(USB_DPRAM + at + i) = word;
    }
}

/* One cycle of the controller's slower clock: its buffer must be described before it is made available (4.1.2.5.1). */
static void settle(void)
{
    __asm__ volatile("nop\nnop\nnop\nnop\nnop\nnop\nnop\nnop\nnop\nnop\nnop\nnop");
}

static void give(uint32_t buffer, uint32_t value)
{
    REG(buffer) = value;
    settle();
    REG(buffer) = value | AVAILABLE;
}

/* The two buffers of one endpoint share a register: each half is written separately, so that the other is left to the chip. */
static void give_half(uint32_t buffer, uint32_t half, uint32_t value)
{
    volatile uint16_t *control = (volatile uint16_t *)(uintptr_t)(buffer + 2 * half);
    *control = (uint16_t)value;
    settle();
    *control = (uint16_t)(value | AVAILABLE);
}

static uint32_t next_pid(uint32_t *pid)
{
    uint32_t now = *pid;
    *pid ^= DATA1;
    return now;
}

static void control_send(const uint8_t *bytes, uint32_t count)
{
    copy_out(AT_CONTROL, bytes, count);
    give(BUFFER_IN(0), FULL | count | next_pid(&state.control_pid));
}

static void control_listen(uint32_t count)
{
    give(BUFFER_OUT(0), count | DATA1);
}

/* The empty packet that means success. */
static void agree(void)
{
    state.control = CONTROL_DONE;
    control_send(NULL, 0);
}

static void refuse(void)
{
    state.control = CONTROL_IDLE;
    REG(USB_EP_STALL_ARM) = 3;
    REG(BUFFER_IN(0)) = STALL;
    REG(BUFFER_OUT(0)) = STALL;
}

static void answer_more(void)
{
    uint16_t count = state.left < PACKET ? state.left : (uint16_t)PACKET;
    control_send(state.from, count);
    state.from += count;
    state.left = (uint16_t)(state.left - count);
    state.ends_short = state.ends_short && count == PACKET;
    if (state.left == 0 && !state.ends_short)
        control_listen(0);
}

/* Answers with `count` bytes, or as many as were requested. A shorter answer that fills its packets ends with an empty one. */
static void answer(const uint8_t *bytes, uint16_t count, uint16_t asked)
{
    state.control = CONTROL_SENDING;
    state.from = bytes;
    state.left = count < asked ? count : asked;
    state.ends_short = count < asked;
    answer_more();
}

static void say_text(const char *words, uint16_t asked)
{
    uint8_t length = 2;
    for (; *words != 0; words++) {
        text[length++] = (uint8_t)*words;
        text[length++] = 0;
    }
    text[0] = length;
    text[1] = DESCRIPTOR_STRING;
    answer(text, length, asked);
}

static void say_serial(uint16_t asked)
{
    static const char digits[] = "0123456789abcdef";
    char words[2 * PORT_ID_BYTES + 1];
    for (uint32_t i = 0; i < PORT_ID_BYTES; i++) {
        words[2 * i] = digits[own_id[i] >> 4];
        words[2 * i + 1] = digits[own_id[i] & 15];
    }
    words[2 * PORT_ID_BYTES] = 0;
    say_text(words, asked);
}

static void say_string(uint8_t index, uint16_t asked)
{
    static const uint8_t languages[] = { 4, DESCRIPTOR_STRING, TWO(ENGLISH) };
    if (index == 0)
        answer(languages, sizeof languages, asked);
    else if (index < SERIAL_STRING)
        say_text(strings[index - 1], asked);
    else if (index == SERIAL_STRING)
        say_serial(asked);
    else
        refuse();
}

static void say_descriptor(uint8_t type, uint8_t index, uint16_t asked)
{
    if (type == DESCRIPTOR_DEVICE)
        answer(device_descriptor, sizeof device_descriptor, asked);
    else if (type == DESCRIPTOR_CONFIGURATION && index == 0)
        answer(configuration_descriptor, sizeof configuration_descriptor, asked);
    else if (type == DESCRIPTOR_STRING)
        say_string(index, asked);
    else
        refuse();
}

static void say_zeros(uint16_t count, uint16_t asked)
{
    static const uint8_t zeros[2];
    answer(zeros, count, asked);
}

/* Offers the host every free buffer, as long as its contents will fit in the ring. */
static void offer(void)
{
    while (state.configured && offered < 2 && ring_room(&ring) >= PACKET * (offered + 1)) {
        give_half(BUFFER_OUT(FROM_HOST), offering_half, PACKET | next_pid(&offering_pid));
        offering_half ^= 1;
        offered++;
    }
}

static void send_more(void)
{
    uint8_t packet[PACKET];
    uint32_t count = 0;
    uint32_t tail = sending_tail;
    if (sending_busy || !state.configured)
        return;
    for (; count < PACKET && tail != sending_head; tail = (tail + 1) % SEND_BYTES)
        packet[count++] = sending[tail];
    if (count == 0 && !sent_full)
        return;
    sending_tail = tail;
    sending_busy = true;
    sent_full = count == PACKET;
    copy_out(AT_TO_HOST, packet, count);
    give(BUFFER_IN(TO_HOST), FULL | count | next_pid(&sending_pid));
}

static void forget_line(void)
{
    sending_tail = sending_head;
    sending_busy = false;
    sent_full = false;
    sending_pid = 0;
    taking_half = 0;
    offering_half = 0;
    offered = 0;
    offering_pid = 0;
}

static void configure(bool on)
{
    forget_line();
    state.configured = on;
    state.open = false;
    CONTROL_OUT(FROM_HOST) = on ? ENABLED | TWO_BUFFERS | TELL_EACH | BULK | AT_FROM_HOST : 0;
    CONTROL_IN(TO_HOST) = on ? ENABLED | TELL_EACH | BULK | AT_TO_HOST : 0;
    CONTROL_IN(NOTICES) = on ? ENABLED | TELL_EACH | INTERRUPT | AT_NOTICES : 0;
    offer();
}

/* A program at the host opens or closes the port. */
static void set_open(bool open)
{
    if (open && !state.open)
        state.opened = true;
    if (!open)
        sending_tail = sending_head;
    state.open = open;
}

static void on_request(uint16_t request, uint16_t value, uint16_t asked)
{
    static const uint8_t configuration[2] = { 0, 1 };
    switch (request) {
    case GET_DESCRIPTOR:
        say_descriptor((uint8_t)(value >> 8), (uint8_t)value, asked);
        break;
    case GET_STATUS_DEVICE:
    case GET_STATUS_INTERFACE:
    case GET_STATUS_ENDPOINT:
        say_zeros(2, asked);
        break;
    case GET_INTERFACE:
        say_zeros(1, asked);
        break;
    case GET_CONFIGURATION:
        answer(&configuration[state.configured], 1, asked);
        break;
    case GET_LINE_CODING:
        answer(coding, CODING_BYTES, asked);
        break;
    case SET_LINE_CODING:
        state.control = CONTROL_CODING;
        control_listen(PACKET);
        break;
    case SET_ADDRESS:
        state.address = (uint8_t)value;
        agree();
        break;
    case SET_CONFIGURATION:
        configure(value != 0);
        agree();
        break;
    case SET_CONTROL_LINE_STATE:
        set_open(value & 1);
        agree();
        break;
    case SET_INTERFACE:
    case CLEAR_ENDPOINT_FEATURE:
    case SEND_BREAK:
        agree();
        break;
    default:
        refuse();
        break;
    }
}

/* Type, request, value, index and length, as two words (USB 2.0 table 9-2). */
static void on_setup(void)
{
    uint32_t first = REG(SETUP_PACKET);
    uint32_t second = REG(SETUP_PACKET + 4);
    state.control_pid = DATA1;
    on_request((uint16_t)((first & 0xFF) << 8 | (first >> 8 & 0xFF)), (uint16_t)(first >> 16), (uint16_t)(second >> 16));
}

static void on_control_sent(void)
{
    if (state.control == CONTROL_SENDING && (state.left > 0 || state.ends_short)) {
        answer_more();
        return;
    }
    if (state.control == CONTROL_DONE)
        state.control = CONTROL_IDLE;
    if (state.address != 0)
        USB_ADDR_ENDP = state.address;
    state.address = 0;
}

static void on_control_came(void)
{
    uint32_t words[2] = { REG(USB_DPRAM + AT_CONTROL), REG(USB_DPRAM + AT_CONTROL + 4) };
    if (state.control != CONTROL_CODING) {
        state.control = CONTROL_IDLE;
        return;
    }
    if ((REG(BUFFER_OUT(0)) & LENGTH) >= CODING_BYTES)
        memcpy(coding, words, CODING_BYTES);
    agree();
}

static void take_half(uint32_t half, uint32_t count)
{
    uint32_t at = USB_DPRAM + AT_FROM_HOST + PACKET * half;
    for (uint32_t i = 0; i < count; i += 4) {
        uint32_t word = REG(at + i);
        for (uint32_t byte = i; byte < i + 4 && byte < count; byte++, word >>= 8)
            ring_put(&ring, (uint8_t)word);
    }
}

/* Both buffers may have arrived; they arrive in turn. */
static void on_came(void)
{
    for (;;) {
        uint32_t control = REG(BUFFER_OUT(FROM_HOST)) >> 16 * taking_half;
        if (offered == 0 || !(control & FULL))
            break;
        take_half(taking_half, control & LENGTH);
        taking_half ^= 1;
        offered--;
        offer();
    }
}

static void on_bus_reset(void)
{
    USB_ADDR_ENDP = 0;
    state.control = CONTROL_IDLE;
    state.address = 0;
    configure(false);
}

static void on_buffers(void)
{
    uint32_t done = USB_BUFF_STATUS;
    USB_BUFF_STATUS = done;
    if (done & STATUS_IN(0))
        on_control_sent();
    if (done & STATUS_OUT(0))
        on_control_came();
    if (done & STATUS_OUT(FROM_HOST))
        on_came();
    if (done & STATUS_IN(TO_HOST)) {
        sending_busy = false;
        send_more();
    }
}

void on_usb(void)
{
    uint32_t why = USB_INTS;
    if (why & ON_BUS_RESET) {
        USB_SIE_STATUS = SIE_BUS_RESET;
        on_bus_reset();
    }
    if (why & ON_SETUP) {
        USB_SIE_STATUS = SIE_SETUP;
        on_setup();
    }
    if (why & ON_BUFFER)
        on_buffers();
}

void on_uart(void)
{
}

void line_start(const uint8_t id[PORT_ID_BYTES])
{
    memcpy(own_id, id, PORT_ID_BYTES);
    CLEAR_BITS(RESETS) = RESET_USBCTRL;
    while (!(REG(RESETS_DONE) & RESET_USBCTRL)) {
    }
    for (uint32_t at = 0; at < SHARED_BYTES; at += 4)
        REG(USB_DPRAM + at) = 0;
    USB_MUXING = 1u << 3 | 1u << 0; /* the chip's own transceiver; connected by software */
    USB_PWR = 1u << 3 | 1u << 2;    /* the bus has power: nothing else feeds the board's connector */
    USB_MAIN_CTRL = 1;              /* a device */
    REG(USB_SIE_CTRL) = 1u << 29;   /* report each packet at the control endpoint */
    USB_INTE = ON_SETUP | ON_BUS_RESET | ON_BUFFER;
    NVIC_ISER = 1u << IRQ_USBCTRL;
    SET_BITS(USB_SIE_CTRL) = 1u << 16; /* pull-up: announces a device */
}

bool line_opened(void)
{
    interrupts_off();
    bool opened = state.opened;
    state.opened = false;
    interrupts_on();
    return opened;
}

uint8_t line_waiting(uint8_t **bytes)
{
    return ring_waiting(&ring, bytes);
}

void line_drop(uint8_t count)
{
    ring_drop(&ring, count);
    interrupts_off();
    offer();
    interrupts_on();
}

bool line_lost(void)
{
    return false;
}

void line_resume(void)
{
}

/* A zero ends a packet of the wire format, which is then sent; otherwise when a USB packet is full. */
void port_send(uint8_t byte)
{
    uint32_t head = sending_head;
    uint32_t next = (head + 1) % SEND_BYTES;
    if (!state.open || next == sending_tail)
        return;
    sending[head] = byte;
    sending_head = next;
    if (byte != 0 && (next - sending_tail) % SEND_BYTES < PACKET)
        return;
    interrupts_off();
    send_more();
    interrupts_on();
}
