#include "dimmers.h"

#include <stdint.h>

#include "limits.h"
#include "pins.h"
#include "port.h"
#include "rp2040.h"

#define STEPS 32768u
#define FIRST_SLICE (DIMMER_FIRST_PIN / 2)
#define SLICES (DIMMERS / 2)

_Static_assert(DIMMERS % 2 == 0 && DIMMER_FIRST_PIN % 2 == 0 && FIRST_SLICE + SLICES <= 8, "dimmers come in whole slices");

static uint16_t duties[DIMMERS];

static uint32_t steps_of(uint16_t duty)
{
    return duty == UINT16_MAX ? STEPS : (uint32_t)duty >> 1;
}

/* The first output is high while the counter is below its level; the second is inverted. */
static void set_slice(uint8_t slice)
{
    uint32_t first = steps_of(duties[2 * slice]);
    uint32_t second = STEPS - steps_of(duties[2 * slice + 1]);
    REG(PWM_SLICE(FIRST_SLICE + slice) + PWM_CC) = second << 16 | first;
}

void dimmers_start(void)
{
    uint32_t enabled = 0;
    for (uint8_t slice = 0; slice < SLICES; slice++) {
        uint32_t at = PWM_SLICE(FIRST_SLICE + slice);
        REG(at + PWM_CSR) = PWM_INVERT_B;
        REG(at + PWM_TOP) = STEPS - 1;
        REG(at + PWM_CTR) = slice * STEPS / SLICES;
        set_slice(slice);
        enabled |= 1u << (FIRST_SLICE + slice);
    }
    PWM_EN = enabled;
    for (uint32_t i = 0; i < DIMMERS; i++)
        GPIO_CTRL(DIMMER_FIRST_PIN + i) = FUNCTION_PWM;
}

void port_dimmer(uint8_t index, uint16_t duty)
{
    duties[index] = duty;
    set_slice(index / 2);
}
