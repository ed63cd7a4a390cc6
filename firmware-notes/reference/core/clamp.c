#include "clamp.h"

#include "budget.h"

/* A duty is a share of 65535 = 255 x 257, a byte a share of 255. */
#define DUTY_FULL 65535ul
#define DUTY_PER_BYTE 257ul
#define UA_PER_MA 1000ul

/* One, for a factor. */
#define WHOLE 65536ul

/*@ lemma factor_fits: \forall integer room, load; 0 <= room < load ==> room * 65536 / load < 65536; */

/*@ assigns \nothing;
    ensures \result == one * other && \result <= 4294967295 * other;
*/
static uint64_t product(uint32_t one, uint32_t other)
{
    return (uint64_t)one * other;
}

/*@ requires \valid_read(setup) && setup_good(setup);
    assigns \nothing;
    ensures \result == (setup->supply == supply ? setup->pixels * setup->dark_uA : 0);
*/
static uint32_t dark_uA(const struct setup *setup, uint8_t supply)
{
    return setup->supply == supply ? (uint32_t)setup->pixels * setup->dark_uA : 0;
}

/*@ requires \valid_read(setup) && supply < SUPPLIES;
    assigns \nothing;
    ensures \result == setup->ceiling_mA[supply] * 1000;
*/
static uint32_t ceiling_uA(const struct setup *setup, uint8_t supply)
{
    return (uint32_t)setup->ceiling_mA[supply] * UA_PER_MA;
}

/*@ requires \valid_read(setup) && \valid_read(frame) && setup_good(setup);
    assigns \nothing;
    ensures \result == strip_formula(setup, frame) && \result <= 4 * 72337965191201025;
*/
static uint64_t strip_load(const struct setup *setup, const struct frame *frame)
{
    uint64_t load = 0;
    /*@ loop invariant 0 <= i <= setup->channels;
        loop invariant load <= i * 72337965191201025;
        loop invariant load == channels_load(setup, frame, i);
        loop assigns i, load;
        loop variant setup->channels - i;
    */
    for (uint8_t i = 0; i < setup->channels; i++)
        load += product(frame_sum(frame, i), (uint32_t)setup->channel_uA[i] * DUTY_PER_BYTE);
    return load;
}

/*@ assigns \nothing;
    ensures \result == duty * full_mA && \result <= 65535 * full_mA;
*/
static uint32_t dimmer_load(uint16_t duty, uint16_t full_mA)
{
    return (uint32_t)duty * full_mA;
}

/*@ requires \valid_read(setup) && \valid_read(frame) && setup_good(setup);
    assigns \nothing;
    ensures \result == dimmers_formula(setup, frame, supply) * 1000 && \result <= 6 * 4294836225 * 1000;
*/
static uint64_t dimmers_load(const struct setup *setup, const struct frame *frame, uint8_t supply)
{
    uint64_t load = 0;
    /*@ loop invariant 0 <= i <= setup->dimmers;
        loop invariant load <= i * 4294836225;
        loop invariant load == dimmers_draw(setup, frame, supply, i);
        loop assigns i, load;
        loop variant setup->dimmers - i;
    */
    for (uint8_t i = 0; i < setup->dimmers; i++)
        if (setup->dimmer[i].supply == supply)
            load += dimmer_load(frame->duty[i], setup->dimmer[i].full_mA);
    return load * UA_PER_MA;
}

/*@ requires \valid_read(setup) && \valid_read(frame) && setup_good(setup);
    assigns \nothing;
    ensures \result == load_formula(setup, frame, supply);
*/
static uint64_t load_of(const struct setup *setup, const struct frame *frame, uint8_t supply)
{
    uint64_t strip = setup->supply == supply ? strip_load(setup, frame) : 0;
    return strip + dimmers_load(setup, frame, supply);
}

/*@ assigns \nothing;
    ensures \result == share(value, factor) && \result <= value;
*/
static uint16_t dim(uint16_t value, uint16_t factor)
{
    return (uint16_t)((uint32_t)value * factor / WHOLE);
}

/*@ requires \valid_read(setup) && \valid(frame) && \separated(setup, frame) && fits(setup, frame) && supply < SUPPLIES;
    assigns frame->bytes[0 .. STORE_BYTES - 1], frame->duty[0 .. DIMMERS - 1];
    ensures setup->supply == supply ==> \forall integer i; 0 <= i < frame->length ==>
        frame->bytes[i] == share(\old(frame->bytes[i]), factor);
    ensures setup->supply != supply ==> \forall integer i; 0 <= i < STORE_BYTES ==> frame->bytes[i] == \old(frame->bytes[i]);
    ensures \forall integer i; 0 <= i < setup->dimmers ==> frame->duty[i] ==
        (setup->dimmer[i].supply == supply ? share(\old(frame->duty[i]), factor) : \old(frame->duty[i]));
*/
static void dim_supply(const struct setup *setup, struct frame *frame, uint8_t supply, uint16_t factor)
{
    if (setup->supply == supply)
        /*@ loop invariant 0 <= i <= frame->length;
            loop invariant \forall integer j; 0 <= j < i ==> frame->bytes[j] == share(\at(frame->bytes[j], Pre), factor);
            loop invariant \forall integer j; i <= j < STORE_BYTES ==> frame->bytes[j] == \at(frame->bytes[j], Pre);
            loop assigns i, frame->bytes[0 .. STORE_BYTES - 1];
            loop variant frame->length - i;
        */
        for (uint16_t i = 0; i < frame->length; i++) {
            frame->bytes[i] = (uint8_t)dim(frame->bytes[i], factor);
            //@ assert frame->bytes[i] == share(\at(frame->bytes[\at(i, Here)], Pre), factor);
        }
    /*@ loop invariant 0 <= i <= setup->dimmers;
        loop invariant \forall integer j; 0 <= j < i ==> frame->duty[j] ==
            (setup->dimmer[j].supply == supply ? share(\at(frame->duty[j], Pre), factor) : \at(frame->duty[j], Pre));
        loop invariant \forall integer j; i <= j < DIMMERS ==> frame->duty[j] == \at(frame->duty[j], Pre);
        loop assigns i, frame->duty[0 .. DIMMERS - 1];
        loop variant setup->dimmers - i;
    */
    for (uint8_t i = 0; i < setup->dimmers; i++)
        if (setup->dimmer[i].supply == supply)
            frame->duty[i] = dim(frame->duty[i], factor);
}

/* Rarely called: kept apart, so that frames within the budget do not pay for its registers. */
/*@ requires \valid_read(setup) && \valid(frame) && \separated(setup, frame) && fits(setup, frame);
    requires supply < setup->supplies;
    assigns frame->bytes[0 .. STORE_BYTES - 1], frame->duty[0 .. DIMMERS - 1];
    ensures !\result ==> idle_formula(setup, supply) + load_formula{Pre}(setup, frame, supply) <= limit_formula(setup, supply);
*/
__attribute__((noinline)) static bool clamp_supply(const struct setup *setup, struct frame *frame, uint8_t supply)
{
    uint32_t dark = dark_uA(setup, supply);
    uint32_t ceiling = ceiling_uA(setup, supply);
    uint64_t room = dark < ceiling ? product(ceiling - dark, DUTY_FULL) : 0;
    uint64_t load = load_of(setup, frame, supply);
    if (dark <= ceiling && load <= room)
        return false;
    uint16_t factor = load == 0 ? 0 : (uint16_t)(room * WHOLE / load);
    //@ assert dark <= ceiling ==> room == limit_formula(setup, supply) - idle_formula(setup, supply) && room < load;
    //@ assert dark <= ceiling ==> room * 65536 / load < 65536;
    //@ assert dark <= ceiling ==> factor == room * 65536 / load;
    //@ assert load > 0 && dark <= ceiling ==> factor == (limit_formula(setup, supply) - idle_formula(setup, supply)) * 65536 / load;
    //@ assert dark > ceiling ==> factor == 0;
    dim_supply(setup, frame, supply, factor);
    return true;
}

bool clamp_frame(const struct setup *setup, struct frame *frame)
{
    bool over = false;
    /*@ loop invariant 0 <= supply <= setup->supplies && fits(setup, frame);
        loop assigns supply, over, frame->bytes[0 .. STORE_BYTES - 1], frame->duty[0 .. DIMMERS - 1];
        loop variant setup->supplies - supply;
    */
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
