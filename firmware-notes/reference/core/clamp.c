#include "clamp.h"

#include "budget.h"

/* A duty is out of 65535 = 255 x 257, a byte out of 255. */
#define DUTY_FULL 65535ul
#define DUTY_PER_BYTE 257ul
#define UA_PER_MA 1000ul

/* One, for a factor. */
#define WHOLE 65536ul

/*@ assigns \nothing;
    ensures \result == draw(one, other) && \result == one * other && \result <= 4294967295 * other;
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

/*@ requires \valid_read(setup) && \valid_read(frame) && fits(setup, frame) && frame_true(frame);
    assigns \nothing;
    ensures \result == strip_formula(setup, frame) && \result <= 4 * 72337965191201025;
*/
static uint64_t strip_load(const struct setup *setup, const struct frame *frame)
{
    uint64_t load = 0;
    /*@ loop invariant 0 <= i <= setup->channels;
        loop invariant load <= i * 72337965191201025;
        loop invariant load == strip_draw(setup, frame, i);
        loop assigns i, load;
        loop variant setup->channels - i;
    */
    for (uint8_t i = 0; i < setup->channels; i++) {
        //@ assert summed(frame, i) == channel_sum(frame, frame->channels, i, frame->at);
        //@ assert summed(frame, i) == channel_sum(frame, setup->channels, i, frame->length);
        //@ assert channel_draw(setup, frame, i) == draw(summed(frame, i), setup->channel_uA[i] * 257);
        //@ assert strip_draw(setup, frame, i + 1) == strip_draw(setup, frame, i) + channel_draw(setup, frame, i);
        load += product(frame_sum(frame, i), (uint32_t)setup->channel_uA[i] * DUTY_PER_BYTE);
    }
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
    ensures \result == dimmers_formula(setup, frame, supply) && \result <= 6 * 4294836225 * 1000;
*/
static uint64_t dimmers_load(const struct setup *setup, const struct frame *frame, uint8_t supply)
{
    uint64_t load = 0;
    /*@ loop invariant 0 <= i <= setup->dimmers;
        loop invariant load <= i * 4294836225;
        loop invariant load * 1000 == dimmers_draw(setup, frame, supply, i);
        loop assigns i, load;
        loop variant setup->dimmers - i;
    */
    for (uint8_t i = 0; i < setup->dimmers; i++) {
        /*@ assert dimmers_draw(setup, frame, supply, i + 1)
                == dimmers_draw(setup, frame, supply, i) + dimmer_draw(setup, frame, supply, i); */
        if (setup->dimmer[i].supply == supply)
            load += dimmer_load(frame->duty[i], setup->dimmer[i].full_mA);
    }
    return load * UA_PER_MA;
}

/*@ requires \valid_read(setup) && \valid_read(frame) && fits(setup, frame);
    requires setup->supply == supply ==> frame_true(frame);
    assigns \nothing;
    ensures \result == load_formula(setup, frame, supply);
*/
static uint64_t load_of(const struct setup *setup, const struct frame *frame, uint8_t supply)
{
    uint64_t strip = setup->supply == supply ? strip_load(setup, frame) : 0;
    return strip + dimmers_load(setup, frame, supply);
}

/* How much of each value is left, out of 65536, for a load that exceeds its room. */
/*@ requires load == 0 ? room == 0 : room < load;
    requires room <= 4294967295 * 65535;
    assigns \nothing;
    ensures load > 0 ==> \result == room * 65536 / load;
    ensures share(load, \result) <= room;
    ensures room == 0 ==> \result == 0;
*/
static uint16_t factor_for(uint64_t room, uint64_t load)
{
    //@ assert load > 0 ==> room * 65536 / load < 65536;
    return load == 0 ? 0 : (uint16_t)(room * WHOLE / load);
}

/*@ assigns \nothing;
    ensures \result == share(value, factor) && \result <= value;
*/
static uint16_t dim(uint16_t value, uint16_t factor)
{
    return (uint16_t)((uint32_t)value * factor / WHOLE);
}

/*@ requires \valid(frame) && frame->length <= STORE_BYTES;
    assigns frame->bytes[0 .. STORE_BYTES - 1];
    ensures \forall integer i; 0 <= i < frame->length ==> frame->bytes[i] == share(\old(frame->bytes[i]), factor);
    ensures \forall integer c; 0 <= channel_sum(frame, frame->channels, c, frame->length)
        <= share(\old(channel_sum(frame, frame->channels, c, frame->length)), factor);
    ensures \forall integer c; 0 <= \old(channel_sum(frame, frame->channels, c, frame->length));
*/
static void dim_strip(struct frame *frame, uint16_t factor)
{
    /*@ loop invariant 0 <= i <= frame->length;
        loop invariant \forall integer j; 0 <= j < i ==> frame->bytes[j] == share(\at(frame->bytes[j], Pre), factor);
        loop invariant \forall integer j; i <= j < STORE_BYTES ==> frame->bytes[j] == \at(frame->bytes[j], Pre);
        loop assigns i, frame->bytes[0 .. STORE_BYTES - 1];
        loop variant frame->length - i;
    */
    for (uint16_t i = 0; i < frame->length; i++)
        frame->bytes[i] = (uint8_t)dim(frame->bytes[i], factor);
    //@ assert same_size{Pre, Here}(frame);
    /*@ ghost
        /@ loop invariant 0 <= i <= frame->length;
           loop invariant \forall integer c; 0 <= channel_sum(frame, \at(frame->channels, Pre), c, i);
           loop invariant \forall integer c; 0 <= channel_sum{Pre}(frame, \at(frame->channels, Pre), c, i);
           loop invariant \forall integer c; channel_sum(frame, \at(frame->channels, Pre), c, i) <= share(channel_sum{Pre}(frame, \at(frame->channels, Pre), c, i), factor);
           loop assigns i;
           loop variant frame->length - i; @/
        for (uint16_t i = 0; i < frame->length; i++) {
            /@ assert frame->bytes[i] == share(\at(frame->bytes[\at(i, Here)], Pre), factor); @/
            /@ assert \forall integer c; i % \at(frame->channels, Pre) == c ==>
                   channel_sum(frame, \at(frame->channels, Pre), c, i + 1) == channel_sum(frame, \at(frame->channels, Pre), c, i) + frame->bytes[i]
                   && channel_sum{Pre}(frame, \at(frame->channels, Pre), c, i + 1)
                       == channel_sum{Pre}(frame, \at(frame->channels, Pre), c, i) + \at(frame->bytes[\at(i, Here)], Pre); @/
            /@ assert \forall integer c; i % \at(frame->channels, Pre) != c ==>
                   channel_sum(frame, \at(frame->channels, Pre), c, i + 1) == channel_sum(frame, \at(frame->channels, Pre), c, i)
                   && channel_sum{Pre}(frame, \at(frame->channels, Pre), c, i + 1) == channel_sum{Pre}(frame, \at(frame->channels, Pre), c, i); @/
            /@ assert \forall integer c; i % \at(frame->channels, Pre) == c ==>
                   share(channel_sum{Pre}(frame, \at(frame->channels, Pre), c, i), factor) + share(\at(frame->bytes[\at(i, Here)], Pre), factor)
                   <= share(channel_sum{Pre}(frame, \at(frame->channels, Pre), c, i + 1), factor); @/
        }
    */
}

/*@ requires \valid_read(setup) && \valid(frame) && \separated(setup, frame) && setup->dimmers <= DIMMERS;
    assigns frame->duty[0 .. DIMMERS - 1];
    ensures \forall integer i; 0 <= i < setup->dimmers ==> frame->duty[i] ==
        (setup->dimmer[i].supply == supply ? share(\old(frame->duty[i]), factor) : \old(frame->duty[i]));
    ensures same_setup{Pre, Post}(setup) && same_size{Pre, Post}(frame);
    ensures 0 <= dimmers_formula(setup, frame, supply) <= share(\old(dimmers_formula(setup, frame, supply)), factor);
    ensures 0 <= \old(dimmers_formula(setup, frame, supply));
    ensures \forall integer s; s != supply ==> dimmers_formula(setup, frame, s) == \old(dimmers_formula(setup, frame, s));
*/
static void dim_dimmers(const struct setup *setup, struct frame *frame, uint8_t supply, uint16_t factor)
{
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
    //@ assert same_setup{Pre, Here}(setup);
    /*@ ghost
        /@ loop invariant 0 <= i <= setup->dimmers;
           loop invariant 0 <= dimmers_draw(setup, frame, supply, i);
           loop invariant 0 <= dimmers_draw{Pre}(setup, frame, supply, i);
           loop invariant dimmers_draw(setup, frame, supply, i) <= share(dimmers_draw{Pre}(setup, frame, supply, i), factor);
           loop invariant \forall integer s; s != supply ==>
               dimmers_draw(setup, frame, s, i) == dimmers_draw{Pre}(setup, frame, s, i);
           loop assigns i;
           loop variant setup->dimmers - i; @/
        for (uint8_t i = 0; i < setup->dimmers; i++) {
            /@ assert setup->dimmer[i].supply == supply ==>
                   frame->duty[i] == share(\at(frame->duty[\at(i, Here)], Pre), factor); @/
            /@ assert setup->dimmer[i].supply != supply ==> frame->duty[i] == \at(frame->duty[\at(i, Here)], Pre); @/
            /@ assert setup->dimmer[i].full_mA == \at(setup->dimmer[\at(i, Here)].full_mA, Pre)
                   && setup->dimmer[i].supply == \at(setup->dimmer[\at(i, Here)].supply, Pre); @/
            /@ assert 0 <= dimmer_draw(setup, frame, supply, i) && 0 <= dimmer_draw{Pre}(setup, frame, supply, i); @/
            /@ assert dimmer_draw(setup, frame, supply, i) <= share(dimmer_draw{Pre}(setup, frame, supply, i), factor); @/
            /@ assert \forall integer s; s != supply ==>
                   dimmer_draw(setup, frame, s, i) == dimmer_draw{Pre}(setup, frame, s, i); @/
            /@ assert \forall integer s; dimmers_draw(setup, frame, s, i + 1)
                   == dimmers_draw(setup, frame, s, i) + dimmer_draw(setup, frame, s, i); @/
            /@ assert \forall integer s; dimmers_draw{Pre}(setup, frame, s, i + 1)
                   == dimmers_draw{Pre}(setup, frame, s, i) + dimmer_draw{Pre}(setup, frame, s, i); @/
            /@ assert share(dimmers_draw{Pre}(setup, frame, supply, i), factor)
                   + share(dimmer_draw{Pre}(setup, frame, supply, i), factor)
                   <= share(dimmers_draw{Pre}(setup, frame, supply, i + 1), factor); @/
        }
    */
}

/*@ requires \valid_read(setup) && \valid(frame) && \separated(setup, frame) && fits(setup, frame) && supply < setup->supplies;
    assigns frame->bytes[0 .. STORE_BYTES - 1], frame->duty[0 .. DIMMERS - 1];
    ensures same_setup{Pre, Post}(setup) && same_size{Pre, Post}(frame);
    ensures load_formula(setup, frame, supply) <= share(\old(load_formula(setup, frame, supply)), factor);
    ensures factor == 0 ==> all_dark(setup, frame, supply);
    ensures \forall integer s; s != supply ==> load_formula(setup, frame, s) == \old(load_formula(setup, frame, s));
    ensures \forall integer s; s != supply && \old(all_dark(setup, frame, s)) ==> all_dark(setup, frame, s);
    ensures setup->supply != supply && \old(frame_true(frame)) ==> frame_true(frame);
*/
static void dim_supply(const struct setup *setup, struct frame *frame, uint8_t supply, uint16_t factor)
{
    if (setup->supply == supply)
        dim_strip(frame, factor);
    //@ assert same_setup{Pre, Here}(setup);
    //@ assert \forall integer s; dimmers_draw(setup, frame, s, setup->dimmers) == dimmers_draw{Pre}(setup, frame, s, setup->dimmers);
    //@ assert \forall integer s; dimmers_formula(setup, frame, s) == dimmers_formula{Pre}(setup, frame, s);
    dim_dimmers(setup, frame, supply, factor);
    //@ assert same_setup{Pre, Here}(setup) && same_size{Pre, Here}(frame);
    /*@ assert setup->supply == supply ==> \forall integer c; 0 <= channel_sum(frame, setup->channels, c, frame->length)
            <= share(channel_sum{Pre}(frame, setup->channels, c, frame->length), factor)
            && 0 <= channel_sum{Pre}(frame, setup->channels, c, frame->length); */
    /*@ assert setup->supply != supply ==> \forall integer i; 0 <= i < frame->length ==>
            frame->bytes[i] == \at(frame->bytes[\at(i, Here)], Pre); */
    /*@ assert setup->supply != supply ==> \forall integer c; channel_sum(frame, setup->channels, c, frame->length)
            == channel_sum{Pre}(frame, setup->channels, c, frame->length); */
    /*@ ghost
        /@ loop invariant 0 <= i <= setup->channels;
           loop invariant setup->supply == supply ==> 0 <= strip_draw{Pre}(setup, frame, i)
               && 0 <= strip_draw(setup, frame, i) <= share(strip_draw{Pre}(setup, frame, i), factor);
           loop invariant setup->supply != supply ==> strip_draw(setup, frame, i) == strip_draw{Pre}(setup, frame, i);
           loop assigns i;
           loop variant setup->channels - i; @/
        for (uint8_t i = 0; i < setup->channels; i++) {
            /@ assert setup->channel_uA[i] == \at(setup->channel_uA[\at(i, Here)], Pre); @/
            /@ assert setup->supply == supply ==> 0 <= channel_draw(setup, frame, i) && 0 <= channel_draw{Pre}(setup, frame, i); @/
            /@ assert setup->supply == supply ==> channel_draw(setup, frame, i)
                   <= draw(share(channel_sum{Pre}(frame, setup->channels, i, frame->length), factor), setup->channel_uA[i] * 257); @/
            /@ assert setup->supply == supply ==>
                   channel_draw(setup, frame, i) <= share(channel_draw{Pre}(setup, frame, i), factor); @/
            /@ assert setup->channels == \at(setup->channels, Pre) && frame->length == \at(frame->length, Pre); @/
            /@ assert setup->supply != supply ==> channel_sum(frame, setup->channels, i, frame->length)
                   == channel_sum{Pre}(frame, \at(setup->channels, Pre), i, \at(frame->length, Pre)); @/
            /@ assert setup->supply != supply ==> channel_draw(setup, frame, i) == channel_draw{Pre}(setup, frame, i); @/
            /@ assert strip_draw(setup, frame, i + 1) == strip_draw(setup, frame, i) + channel_draw(setup, frame, i); @/
            /@ assert strip_draw{Pre}(setup, frame, i + 1)
                   == strip_draw{Pre}(setup, frame, i) + channel_draw{Pre}(setup, frame, i); @/
            /@ assert setup->supply == supply ==>
                   share(strip_draw{Pre}(setup, frame, i), factor) + share(channel_draw{Pre}(setup, frame, i), factor)
                   <= share(strip_draw{Pre}(setup, frame, i + 1), factor); @/
        }
    */
    /*@ assert setup->supply == supply ==> 0 <= strip_formula{Pre}(setup, frame)
            && 0 <= strip_formula(setup, frame) <= share(strip_formula{Pre}(setup, frame), factor); */
    //@ assert setup->supply != supply ==> strip_formula(setup, frame) == strip_formula{Pre}(setup, frame);
    /*@ assert setup->supply == supply ==> strip_formula(setup, frame) + dimmers_formula(setup, frame, supply)
            <= share(strip_formula{Pre}(setup, frame) + dimmers_formula{Pre}(setup, frame, supply), factor); */
    //@ assert load_formula(setup, frame, supply) <= share(load_formula{Pre}(setup, frame, supply), factor);
}

/* Rarely called: kept separate so that frames within the budget do not pay for its registers. */
/*@ requires \valid_read(setup) && \valid(frame) && \separated(setup, frame) && fits(setup, frame);
    requires supply < setup->supplies && (setup->supply == supply ==> frame_true(frame));
    assigns frame->bytes[0 .. STORE_BYTES - 1], frame->duty[0 .. DIMMERS - 1];
    ensures fits(setup, frame);
    ensures held(setup, frame, supply);
    ensures \forall integer s; 0 <= s < SUPPLIES && s != supply && \old(held(setup, frame, s)) ==> held(setup, frame, s);
    ensures setup->supply != supply && \old(frame_true(frame)) ==> frame_true(frame);
*/
__attribute__((noinline)) static bool clamp_supply(const struct setup *setup, struct frame *frame, uint8_t supply)
{
    uint32_t dark = dark_uA(setup, supply);
    uint32_t ceiling = ceiling_uA(setup, supply);
    uint64_t room = dark < ceiling ? product(ceiling - dark, DUTY_FULL) : 0;
    uint64_t load = load_of(setup, frame, supply);
    //@ assert idle_formula(setup, supply) == dark * 65535 && limit_formula(setup, supply) == ceiling * 65535;
    //@ assert dark < ceiling ==> room == ceiling * 65535 - dark * 65535;
    //@ assert dark >= ceiling ==> room == 0;
    //@ assert load == load_formula(setup, frame, supply);
    //@ assert dark <= ceiling && load <= room ==> within(setup, frame, supply);
    //@ assert dark <= ceiling && load <= room ==> held(setup, frame, supply);
    if (dark <= ceiling && load <= room)
        return false;
    uint16_t factor = factor_for(room, load);
    dim_supply(setup, frame, supply, factor);
    //@ assert same_setup{Pre, Here}(setup) && same_size{Pre, Here}(frame);
    //@ assert load_formula(setup, frame, supply) <= room;
    //@ assert idle_formula(setup, supply) == dark * 65535 && limit_formula(setup, supply) == ceiling * 65535;
    //@ assert dark <= ceiling ==> within(setup, frame, supply);
    //@ assert dark > ceiling ==> all_dark(setup, frame, supply);
    //@ assert held(setup, frame, supply);
    /*@ assert \forall integer s; 0 <= s < SUPPLIES && s != supply && held{Pre}(setup, frame, s) ==> held(setup, frame, s); */
    //@ assert fits(setup, frame);
    return true;
}

bool clamp_frame(const struct setup *setup, struct frame *frame)
{
    bool over = false;
    /*@ loop invariant 0 <= supply <= setup->supplies;
        loop invariant fits(setup, frame);
        loop invariant supply <= setup->supply ==> frame_true(frame);
        loop invariant \forall integer s; 0 <= s < supply ==> held(setup, frame, s);
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
