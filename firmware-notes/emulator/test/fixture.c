/*
 * A small firmware that shows the board's every side. 500 000 baud; it says 'R' and MCUSR when it has started, and then
 * obeys single letters:
 *   e X   says X
 *   s N   drives N bytes of strip on PB0 (0x00, 0x53, 0xa6 ...: 83 more each time), then says 's'
 *   p V   sets OC0A to V of 255, 977 Hz fast PWM, and says 'p'
 *   d     listens to nobody for 1 ms, then says 'd'
 *   o     says how many data overruns it saw
 *   w     hangs until the watchdog bites
 *   z     sleeps until the next byte comes, then says it
 */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>
#include <avr/wdt.h>
#include <util/delay.h>

static volatile uint8_t came;
static volatile uint8_t has_come;
static uint8_t overruns;

ISR(USART_RX_vect)
{
    came = UDR0;
    has_come = 1;
    UCSR0B &= (uint8_t)~(1 << RXCIE0);
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

/* 0 code: 5 cycles high, 13 low and more; 1 code: 12 high, 7 low and more. At 16 MHz within the WS2812B's limits. */
static void drive(uint8_t byte)
{
    for (uint8_t bit = 8; bit > 0; bit--, byte <<= 1) {
        if (byte & 0x80) {
            asm volatile("sbi %0, 0\n nop\n nop\n nop\n nop\n nop\n nop\n nop\n nop\n nop\n nop\n cbi %0, 0\n"
                         :: "I"(_SFR_IO_ADDR(PORTB)));
        } else {
            asm volatile("sbi %0, 0\n nop\n nop\n nop\n cbi %0, 0\n nop\n nop\n nop\n nop\n nop\n nop\n"
                         :: "I"(_SFR_IO_ADDR(PORTB)));
        }
    }
}

static void drive_strip(uint8_t count)
{
    uint8_t byte = 0;
    for (; count > 0; count--, byte += 83)
        drive(byte);
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
    DDRB = 1 << PB0;
    UCSR0A = 1 << U2X0;
    UBRR0 = 3;
    UCSR0B = 1 << RXEN0 | 1 << TXEN0;
    say('R');
    say(cause);
    for (;;)
        obey(hear());
}
