#include "clamp.h"

#include "budget.h"

/* A duty is a share of 65535 = 255 x 257, a byte a share of 255. */
#define DUTY_FULL 65535ul
#define DUTY_PER_BYTE 257ul
#define UA_PER_MA 1000ul

/* One, for a factor. */
#define WHOLE_BITS 16

static uint64_t product(uint32_t one, uint32_t other)
{
    return (uint64_t)one * other;
}

static uint32_t dark_uA(const struct setup *setup, uint8_t supply)
{
    return setup->supply == supply ? (uint32_t)setup->pixels * setup->dark_uA : 0;
}

static uint32_t ceiling_uA(const struct setup *setup, uint8_t supply)
{
    return (uint32_t)setup->ceiling_mA[supply] * UA_PER_MA;
}

static uint64_t strip_load(const struct setup *setup, const struct frame *frame)
{
    uint64_t load = 0;
    for (uint8_t i = 0; i < setup->channels; i++)
        load += product(frame_sum(frame, i), (uint32_t)setup->channel_uA[i] * DUTY_PER_BYTE);
    return load;
}

static uint64_t dimmers_load(const struct setup *setup, const struct frame *frame, uint8_t supply)
{
    uint64_t load = 0;
    for (uint8_t i = 0; i < setup->dimmers; i++)
        if (setup->dimmer[i].supply == supply)
            load += (uint32_t)frame->duty[i] * setup->dimmer[i].full_mA;
    return load * UA_PER_MA;
}

static uint64_t load_of(const struct setup *setup, const struct frame *frame, uint8_t supply)
{
    uint64_t strip = setup->supply == supply ? strip_load(setup, frame) : 0;
    return strip + dimmers_load(setup, frame, supply);
}

static uint16_t dim(uint16_t value, uint16_t factor)
{
    return (uint16_t)((uint32_t)value * factor >> WHOLE_BITS);
}

static void dim_supply(const struct setup *setup, struct frame *frame, uint8_t supply, uint16_t factor)
{
    if (setup->supply == supply)
        for (uint16_t i = 0; i < frame->length; i++)
            frame->bytes[i] = (uint8_t)dim(frame->bytes[i], factor);
    for (uint8_t i = 0; i < setup->dimmers; i++)
        if (setup->dimmer[i].supply == supply)
            frame->duty[i] = dim(frame->duty[i], factor);
}

/* Rarely called: kept apart, so that frames within the budget do not pay for its registers. */
__attribute__((noinline)) static bool clamp_supply(const struct setup *setup, struct frame *frame, uint8_t supply)
{
    uint32_t dark = dark_uA(setup, supply);
    uint32_t ceiling = ceiling_uA(setup, supply);
    uint64_t room = dark < ceiling ? product(ceiling - dark, DUTY_FULL) : 0;
    uint64_t load = load_of(setup, frame, supply);
    if (dark <= ceiling && load <= room)
        return false;
    uint16_t factor = load == 0 ? 0 : (uint16_t)((room << WHOLE_BITS) / load);
    dim_supply(setup, frame, supply, factor);
    return true;
}

bool clamp_frame(const struct setup *setup, struct frame *frame)
{
    bool over = false;
    for (uint8_t supply = 0; supply < setup->supplies; supply++)
        over |= !budget_keeps(setup, frame, supply) && clamp_supply(setup, frame, supply);
    return over;
}

uint16_t clamp_dark_over(const struct setup *setup)
{
    uint32_t dark = dark_uA(setup, setup->supply);
    if (dark <= ceiling_uA(setup, setup->supply))
        return 0;
    uint32_t dark_mA = (dark + UA_PER_MA - 1) / UA_PER_MA;
    return dark_mA < UINT16_MAX ? (uint16_t)dark_mA : UINT16_MAX;
}
