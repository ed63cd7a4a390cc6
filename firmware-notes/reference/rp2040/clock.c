#include "clock.h"

#include "interrupts.h"
#include "rp2040.h"

#define CRYSTAL_MHZ 12u
#define US_PER_MS 1000u

/* Spends the end of a wait awake: an alarm set for this moment or an earlier one would never fire. */
#define AWAKE_US 2u

/* XOSC: 1 to 15 MHz, and its code for "on"; startup in steps of 256 cycles, here 1 ms (datasheet 2.16). */
#define XOSC_RANGE 0xAA0u
#define XOSC_ON (0xFABu << 12)
#define XOSC_DELAY ((CRYSTAL_MHZ * 1000u + 255u) / 256u)
#define STABLE (1u << 31)

/* PLL power register: what is switched off (2.18). */
#define PLL_POWER_DOWN (1u << 0)
#define PLL_POST_DOWN (1u << 3)
#define PLL_VCO_DOWN (1u << 5)

static uint32_t us_seen;
static uint32_t us_over;
static uint32_t ms;

static void start_crystal(void)
{
    REG(XOSC_CTRL) = XOSC_RANGE;
    REG(XOSC_STARTUP) = XOSC_DELAY;
    SET_BITS(XOSC_CTRL) = XOSC_ON;
    while (!(REG(XOSC_STATUS) & STABLE)) {
    }
}

/* Makes crystal x multiple / one / other; crystal x multiple is 750 to 1600 MHz. */
static void start_pll(uint32_t pll, uint32_t reset, uint32_t multiple, uint32_t one, uint32_t other)
{
    CLEAR_BITS(RESETS) = reset;
    while (!(REG(RESETS_DONE) & reset)) {
    }
    REG(pll + PLL_CS) = 1;
    REG(pll + PLL_FBDIV) = multiple;
    CLEAR_BITS(pll + PLL_PWR) = PLL_POWER_DOWN | PLL_VCO_DOWN;
    while (!(REG(pll + PLL_CS) & STABLE)) {
    }
    REG(pll + PLL_PRIM) = one << 16 | other << 12;
    CLEAR_BITS(pll + PLL_PWR) = PLL_POST_DOWN;
}

/* The reference comes from the crystal, the system clock from its PLL, USB from the other. A source is selected once it runs (2.15.3.2). */
static void select_sources(void)
{
    REG(CLK_REF_CTRL) = 2;
    while (!(REG(CLK_REF_SELECTED) & 1u << 2)) {
    }
    REG(CLK_SYS_CTRL) = 0;
    while (!(REG(CLK_SYS_SELECTED) & 1u << 0)) {
    }
    REG(CLK_SYS_CTRL) = 1;
    while (!(REG(CLK_SYS_SELECTED) & 1u << 1)) {
    }
    REG(CLK_PERI_CTRL) = CLK_ENABLE;
    REG(CLK_USB_CTRL) = CLK_ENABLE;
}

void clock_start(void)
{
    start_crystal();
    start_pll(PLL_SYS, RESET_PLL_SYS, 128, 6, 2);
    start_pll(PLL_USB, RESET_PLL_USB, 100, 5, 5);
    select_sources();
    WATCHDOG_TICK = WATCHDOG_TICK_ENABLE | CRYSTAL_MHZ;
    CLEAR_BITS(RESETS) = RESET_TIMER;
    while (!(REG(RESETS_DONE) & RESET_TIMER)) {
    }
    TIMER_INTE = 1;
    NVIC_ISER = 1u << IRQ_TIMER0;
}

void on_tick(void)
{
}

void on_alarm(void)
{
    TIMER_INTR = 1;
}

void clock_tick(void)
{
    SYST_RVR = CLOCK_HZ / 1000 - 1;
    SYST_CVR = 0;
    SYST_CSR = 7; /* on, with interrupt, from the processor's clock */
}

uint32_t clock_us(void)
{
    return TIMER_RAWL;
}

uint32_t clock_ms(void)
{
    uint32_t now = clock_us();
    us_over += now - us_seen;
    us_seen = now;
    ms += us_over / US_PER_MS;
    us_over %= US_PER_MS;
    return ms;
}

bool clock_reached(uint32_t us)
{
    return (int32_t)(clock_us() - us) >= 0;
}

void clock_wait(uint32_t us)
{
    interrupts_off();
    while (!clock_reached(us)) {
        TIMER_ALARM0 = us;
        if (!clock_reached(us - AWAKE_US))
            sleep();
        interrupts_on();
        interrupts_off();
    }
    interrupts_on();
}
