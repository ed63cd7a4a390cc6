/*
 * A small firmware that shows the board's every side. 500 000 baud; it says 'R' and MCUSR when it has started, and then
 * obeys single letters:
 *   e X   says X
 *   s N   drives N bytes of strip on PD4, N over 0 (0x00, 0x53, 0xa6 ...: 83 more each time), then says 's'
 *   p V   sets OC0A to V of 255, 977 Hz fast PWM, and says 'p'
 *   d     listens to nobody for 1 ms, then says 'd'
 *   o     says how many data overruns it saw
 *   w     hangs until the watchdog bites
 *   m N   drives N bytes of zeros (as s, but each pulse begins with SBI and ends with OUT), then says 'm'
 *   z     sleeps until the next byte comes, then says it
 */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>
#include <avr/wdt.h>
#include <util/delay.h>

volatile uint8_t came;
volatile uint8_t has_come;
static uint8_t overruns;

/* 15 cycles, after 3 of the vector's JMP. */
ISR(USART_RX_vect, ISR_NAKED)
{
    asm volatile(
        "push r24\n"                    /* 2 */
        "lds r24, %[data]\n"            /* 2 */
        "sts came, r24\n"               /* 2 */
        "ldi r24, 1\n"                  /* 1 */
        "sts has_come, r24\n"           /* 2 */
        "pop r24\n"                     /* 2 */
        "reti\n"                        /* 4 */
        :: [data] "n"(_SFR_MEM_ADDR(UDR0)));
}

static uint8_t hear(void)
{
    while (!(UCSR0A & (1 << RXC0)))
        wdt_reset();
    if (UCSR0A & (1 << DOR0))
        overruns++;
    return UDR0;
}

static void say(uint8_t byte)
{
    while (!(UCSR0A & (1 << UDRE0)))
        ;
    UDR0 = byte;
}

/*
 * A bit takes 19 cycles; the number before a line is the cycle in which it ends. The pin changes as OUT ends: a 0 code is
 * high from 1 to 6, 5 cycles, and low for 14; a 1 code is high from 1 to 12, 11 cycles, and low for 8.
 */
static void drive_strip(uint8_t count)
{
    uint8_t high = PORTD | 1 << PD4;
    uint8_t low = PORTD & (uint8_t)~(1 << PD4);
    uint8_t byte = 0;
    uint8_t next = 0;
    uint8_t bits = 8;
    asm volatile(
        "1: out %[port], %[high]\n"     /*  1 */
        "   nop\n"                      /*  2 */
        "   nop\n"                      /*  3 */
        "   nop\n"                      /*  4 */
        "   sbrs %[byte], 7\n"          /*  5, or 6 and past the next */
        "   out %[port], %[low]\n"      /*  6 */
        "   lsl %[byte]\n"              /*  7 */
        "   dec %[bits]\n"              /*  8 */
        "   brne 2f\n"                  /*  9, or 10 and away */
        "   subi %[next], -83\n"        /* 10 */
        "   mov %[byte], %[next]\n"     /* 11 */
        "   out %[port], %[low]\n"      /* 12 */
        "   ldi %[bits], 8\n"           /* 13 */
        "   nop\n"                      /* 14 */
        "   nop\n"                      /* 15 */
        "   nop\n"                      /* 16 */
        "   dec %[count]\n"             /* 17 */
        "   brne 1b\n"                  /* 19 */
        "   rjmp 3f\n"
        "2: nop\n"                      /* 11 */
        "   out %[port], %[low]\n"      /* 12 */
        "   nop\n"                      /* 13 */
        "   nop\n"                      /* 14 */
        "   nop\n"                      /* 15 */
        "   nop\n"                      /* 16 */
        "   nop\n"                      /* 17 */
        "   rjmp 1b\n"                  /* 19 */
        "3:\n"
        : [byte] "+r"(byte), [next] "+d"(next), [bits] "+d"(bits), [count] "+r"(count)
        : [port] "I"(_SFR_IO_ADDR(PORTD)), [high] "r"(high), [low] "r"(low));
    _delay_us(300);
}

/* A bit takes 20 cycles: high for 5, from the end of SBI to the end of OUT; low for 15. */
static void drive_mixed(uint8_t count)
{
    uint8_t low = PORTD & (uint8_t)~(1 << PD4);
    for (; count > 0; count--) {
        uint8_t bits = 8;
        asm volatile(
            "1: sbi %[port], 4\n"       /*  2 */
            "   nop\n"                  /*  3 */
            "   nop\n"                  /*  4 */
            "   nop\n"                  /*  5 */
            "   nop\n"                  /*  6 */
            "   out %[port], %[low]\n"  /*  7 */
            "   rjmp .+0\n"             /*  9 */
            "   rjmp .+0\n"             /* 11 */
            "   rjmp .+0\n"             /* 13 */
            "   rjmp .+0\n"             /* 15 */
            "   rjmp .+0\n"             /* 17 */
            "   dec %[bits]\n"          /* 18 */
            "   brne 1b\n"              /* 20 */
            : [bits] "+r"(bits) : [port] "I"(_SFR_IO_ADDR(PORTD)), [low] "r"(low));
    }
    _delay_us(300);
}

static void dim(uint8_t duty)
{
    DDRD |= 1 << PD6;
    OCR0A = duty;
    TCCR0A = 1 << COM0A1 | 1 << WGM01 | 1 << WGM00;
    TCCR0B = 1 << CS01 | 1 << CS00;
}

static uint8_t doze(void)
{
    has_come = 0;
    UCSR0B |= 1 << RXCIE0;
    set_sleep_mode(SLEEP_MODE_IDLE);
    sei();
    while (!has_come)
        sleep_mode();
    cli();
    UCSR0B &= (uint8_t)~(1 << RXCIE0);
    return came;
}

static void obey(uint8_t letter)
{
    switch (letter) {
    case 'e':
        say(hear());
        break;
    case 's':
        drive_strip(hear());
        say('s');
        break;
    case 'm':
        drive_mixed(hear());
        say('m');
        break;
    case 'p':
        dim(hear());
        say('p');
        break;
    case 'd':
        _delay_ms(1);
        say('d');
        break;
    case 'o':
        say(overruns);
        break;
    case 'w':
        for (;;)
            ;
    case 'z':
        wdt_disable();
        say(doze());
        wdt_enable(WDTO_60MS);
        break;
    }
}

int main(void)
{
    uint8_t cause = MCUSR;
    MCUSR = 0;
    wdt_enable(WDTO_60MS);
    DDRD = 1 << PD4;
    UCSR0A = 1 << U2X0;
    UBRR0 = 3;
    UCSR0B = 1 << RXEN0 | 1 << TXEN0;
    say('R');
    say(cause);
    for (;;)
        obey(hear());
}
