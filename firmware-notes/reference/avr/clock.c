#include "clock.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/atomic.h>

#define TICK_US 256
#define MS_US 1000

static volatile uint16_t ticks;

static uint16_t ticks_seen;
static uint16_t us;
static uint32_t ms;

ISR(TIMER1_OVF_vect)
{
    ticks++;
}

void clock_start(void)
{
    ICR1 = TICK_CYCLES - 1;
    TCCR1A = _BV(WGM11);
    TCCR1B = _BV(WGM13) | _BV(WGM12) | _BV(CS10);
    TIMSK1 = _BV(TOIE1);
}

bool clock_ticked(void)
{
    return *(volatile uint8_t *)&ticks != (uint8_t)ticks_seen;
}

uint32_t clock_ms(void)
{
    uint16_t now;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        now = ticks;
    }
    for (; ticks_seen != now; ticks_seen++) {
        us += TICK_US;
        if (us >= MS_US) {
            us -= MS_US;
            ms++;
        }
    }
    return ms;
}

/* Whether an overflow came before the count was read at `count`, and its interrupt has not run. */
static bool pending(uint16_t count)
{
    return (TIFR1 & _BV(TOV1)) && count < TICK_CYCLES / 2;
}

uint16_t clock_16us(void)
{
    uint16_t time;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        uint16_t count = TCNT1;
        time = (uint16_t)((ticks + pending(count)) * (TICK_CYCLES / 256) + count / 256);
    }
    return time;
}

uint16_t clock_pause(void)
{
    uint16_t count = TCNT1;
    if (pending(count)) {
        TIFR1 = _BV(TOV1);
        ticks++;
    }
    return count;
}

/* The count, read long enough before an overflow that none occurs until it is used. */
static uint16_t steady_count(void)
{
    uint16_t count;
    do
        count = TCNT1;
    while (count > TICK_CYCLES - 64);
    return count;
}

void clock_resume(uint16_t paused, uint32_t cycles)
{
    uint16_t count = steady_count();
    uint32_t passed = paused + cycles + TICK_CYCLES / 2 - count;
    TIFR1 = _BV(TOV1);
    ticks += (uint16_t)(passed >> 8) >> 4;
}
