/** The ceiling: wire.md section 4, compared with a separate calculation in 128 bits and with floating point. */
#include <string.h>

#include "budget.h"
#include "chance.h"
#include "check.h"
#include "clamp.h"
#include "draw.h"
#include "host.h"
#include "tests.h"

__extension__ typedef unsigned __int128 wide;

static struct setup setup;
static struct frame frame;
static struct frame before;

static void read_setup(struct body body)
{
    CHECK(setup_read(&setup, body.bytes, (uint16_t)body.length).code == COMPLAINT_NONE, "the test's own set-up");
}

static void fill(uint8_t (*byte)(void))
{
    frame_clear(&frame, setup_strip_bytes(&setup), setup.channels);
    frame_open(&frame);
    for (uint16_t at = 0; at < frame.length;) {
        uint8_t stretch[255];
        uint8_t count = (uint8_t)(1 + chance(255));
        if (count > frame_room(&frame))
            count = (uint8_t)frame_room(&frame);
        for (uint8_t i = 0; i < count; i++)
            stretch[i] = byte();
        frame_put(&frame, stretch, count);
        at = (uint16_t)(at + count);
    }
    CHECK(frame_room(&frame) == 0, "%u", frame_room(&frame));
    before = frame;
}

static uint8_t full(void)
{
    return 255;
}

static uint8_t any(void)
{
    return (uint8_t)chance(256);
}

static uint8_t dark(void)
{
    return 0;
}

/* wire.md section 6, "The ceiling, by hand": 255 becomes 169, and the two pixels draw 49.7 mA. */
static void worked_example(void)
{
    read_setup(host_setup_of(2, 50, AFTER_DARK));
    fill(full);
    CHECK(clamp_frame(&setup, &frame), "not dimmed");
    for (int i = 0; i < 6; i++)
        CHECK(frame.bytes[i] == 169, "byte %d is %u", i, frame.bytes[i]);
    double mA = draw_mA(&setup, frame.bytes, frame.duty, 0);
    CHECK(mA > 49.65 && mA < 49.75, "%f mA", mA);
}

/* The same light with a ceiling that it just meets, 74 mA, and one that is 1 mA lower. */
static void frame_at_the_ceiling_is_left_alone(void)
{
    read_setup(host_setup_of(2, 74, AFTER_DARK));
    fill(full);
    CHECK(!clamp_frame(&setup, &frame), "dimmed");
    CHECK(memcmp(&frame, &before, sizeof frame) == 0, "changed");
    read_setup(host_setup_of(2, 73, AFTER_DARK));
    CHECK(clamp_frame(&setup, &frame), "not dimmed");
    CHECK(frame.bytes[0] < 255, "%u", frame.bytes[0]);
}

static void strip_that_is_over_by_itself_is_dark(void)
{
    read_setup(host_setup_of(300, 299, AFTER_DARK));
    CHECK(clamp_dark_over(&setup) == 300, "%u", clamp_dark_over(&setup));
    fill(any);
    CHECK(clamp_frame(&setup, &frame), "not dimmed");
    for (int i = 0; i < 900; i++)
        CHECK(frame.bytes[i] == 0, "byte %d is %u", i, frame.bytes[i]);
    fill(dark);
    CHECK(clamp_frame(&setup, &frame), "over, though nothing can be dimmed");
}

static void dark_current_is_rounded_up(void)
{
    struct body body = host_setup_of(1, 0, AFTER_DARK);
    body.bytes[15] = 0;
    body.bytes[16] = 1;
    read_setup(body);
    CHECK(clamp_dark_over(&setup) == 1, "%u", clamp_dark_over(&setup));
    body.bytes[1] = 0;
    read_setup(body);
    CHECK(clamp_dark_over(&setup) == 0, "%u", clamp_dark_over(&setup));
}

/* On a board with room for so many: 20000 dark pixels of 3277 uA draw 65540 mA, more than a complaint can express. */
static void dark_current_that_is_too_large_to_tell_is_the_most(void)
{
    read_setup(host_setup_of(1, 1000, AFTER_DARK));
    setup.pixels = 20000;
    setup.dark_uA = 3276;
    CHECK(clamp_dark_over(&setup) == 65520, "%u", clamp_dark_over(&setup));
    setup.dark_uA = 3277;
    CHECK(clamp_dark_over(&setup) == 65535, "%u", clamp_dark_over(&setup));
    setup.pixels = 65000 / 3;
    setup.dark_uA = 65535;
    CHECK(clamp_dark_over(&setup) == 65535, "%u", clamp_dark_over(&setup));
}

/* Numbers at the ends of their ranges occur as often as others. */
static uint16_t edgy(uint16_t most)
{
    switch (chance(6)) {
    case 0:
        return 0;
    case 1:
        return most;
    case 2:
        return (uint16_t)chance(most / 100u + 1);
    default:
        return (uint16_t)chance(most + 1u);
    }
}

static void any_setup(void)
{
    memset(&setup, 0, sizeof setup);
    setup.channels = (uint8_t)(3 + chance(2));
    setup.pixels = edgy((uint16_t)(STORE_BYTES / setup.channels));
    for (int i = 0; i < setup.channels; i++)
        setup.channel_uA[i] = edgy(65535);
    setup.dark_uA = edgy(chance(2) ? 2000 : 65535);
    setup.supplies = (uint8_t)(1 + chance(SUPPLIES));
    setup.supply = (uint8_t)chance(setup.supplies);
    for (int i = 0; i < setup.supplies; i++)
        setup.ceiling_mA[i] = edgy(65535);
    setup.dimmers = (uint8_t)chance(DIMMERS + 1);
    for (int i = 0; i < setup.dimmers; i++) {
        setup.dimmer[i].supply = (uint8_t)chance(setup.supplies);
        setup.dimmer[i].full_mA = edgy(65535);
    }
}

static wide load_of(uint8_t supply)
{
    wide load = 0;
    for (uint16_t i = 0; setup.supply == supply && i < before.length; i++)
        load += (wide)before.bytes[i] * setup.channel_uA[i % setup.channels] * 257;
    for (int i = 0; i < setup.dimmers; i++)
        if (setup.dimmer[i].supply == supply)
            load += (wide)before.duty[i] * setup.dimmer[i].full_mA * 1000;
    return load;
}

/* The factor k of section 4, or 65536 where the supply is not over. */
static uint32_t factor_of(uint8_t supply)
{
    wide idle = setup.supply == supply ? (wide)setup.pixels * setup.dark_uA * 65535 : 0;
    wide load = load_of(supply);
    wide limit = (wide)setup.ceiling_mA[supply] * 1000 * 65535;
    if (idle + load <= limit)
        return 65536;
    wide room = idle < limit ? limit - idle : 0;
    return load == 0 ? 0 : (uint32_t)(room * 65536 / load);
}

static bool formula_holds(void)
{
    uint32_t strip = factor_of(setup.supply);
    bool over = false;
    for (uint8_t supply = 0; supply < setup.supplies; supply++)
        over |= factor_of(supply) < 65536;
    for (uint16_t i = 0; i < before.length; i++)
        CHECK(frame.bytes[i] == before.bytes[i] * strip >> 16, "byte %u: %u of %u", i, frame.bytes[i], before.bytes[i]);
    for (int i = 0; i < setup.dimmers; i++) {
        wide duty = (wide)before.duty[i] * factor_of(setup.dimmer[i].supply) >> 16;
        CHECK(frame.duty[i] == duty, "duty %d: %u of %u", i, frame.duty[i], before.duty[i]);
    }
    return over;
}

static void formula_is_exact_and_the_ceiling_holds(void)
{
    int dimmed = 0;
    for (int round = 0; round < 20000; round++) {
        any_setup();
        fill(chance(3) ? any : chance(2) ? full : dark);
        for (int i = 0; i < setup.dimmers; i++)
            frame.duty[i] = before.duty[i] = edgy(65535);
        bool over = clamp_frame(&setup, &frame);
        CHECK(formula_holds() == over, "round %d", round);
        CHECK(draw_within(&setup, frame.bytes, frame.duty), "round %d", round);
        dimmed += over;
    }
    CHECK(dimmed > 2000 && dimmed < 18000, "%d of 20000 were over: the set-ups are one-sided", dimmed);
}

/* A ceiling that the load meets, misses by little, or misses by much, up or down. */
static uint16_t ceiling_about(uint8_t supply)
{
    wide idle = setup.supply == supply ? (wide)setup.pixels * setup.dark_uA * 65535 : 0;
    wide need_mA = (idle + load_of(supply)) / (1000ul * 65535);
    long mA = (long)need_mA + (long)chance(7) - 3 + (chance(2) ? (long)chance(200) - 100 : 0);
    return (uint16_t)(mA < 0 ? 0 : mA > 65535 ? 65535 : mA);
}

static void budget_passes_nothing_that_is_over(void)
{
    int over = 0;
    for (int round = 0; round < 20000; round++) {
        any_setup();
        fill(chance(3) ? any : chance(2) ? full : dark);
        for (int i = 0; i < setup.dimmers; i++)
            frame.duty[i] = before.duty[i] = edgy(65535);
        for (uint8_t supply = 0; supply < setup.supplies; supply++) {
            setup.ceiling_mA[supply] = ceiling_about(supply);
            bool within = factor_of(supply) == 65536;
            CHECK(within || !budget_keeps(&setup, &frame, supply), "round %d, supply %u", round, supply);
            over += !within;
        }
    }
    CHECK(over > 5000, "only %d were over", over);
}

/* Rounding may cost 1/47 of 12 mA a channel, 4 x 257 / 1000 of a dimmer, and a step of the duty: 3 % in all. */
static void budget_passes_what_is_well_within(void)
{
    for (int round = 0; round < 2000; round++) {
        read_setup(host_setup_of(300, 0, AFTER_DARK));
        setup.dimmers = 2;
        setup.dimmer[0].full_mA = setup.dimmer[1].full_mA = 1000;
        fill(any);
        frame.duty[0] = before.duty[0] = edgy(65535);
        frame.duty[1] = before.duty[1] = edgy(65535);
        setup.ceiling_mA[0] = (uint16_t)(draw_mA(&setup, frame.bytes, frame.duty, 0) * 1.03 + 2);
        CHECK(budget_keeps(&setup, &frame, 0), "round %d", round);
    }
}

/* The largest numbers that a port may have room for must not overflow: 65000 bytes, 12 dimmers, every current at its maximum. */
static void budget_holds_the_largest_numbers(void)
{
    memset(&setup, 0, sizeof setup);
    setup.supplies = 1;
    setup.channels = 4;
    setup.pixels = STORE_BYTES / 4;
    setup.ceiling_mA[0] = 65535;
    for (int i = 0; i < 4; i++)
        setup.channel_uA[i] = 65535;
    fill(full);
    for (int i = 0; i < 4; i++) {
        uint32_t sum = 65000ul / 3 * 255;
        frame.sum[i].low = (uint16_t)sum;
        frame.sum[i].high = (uint16_t)(sum >> 16);
        CHECK(frame_sum(&frame, (uint8_t)i) == sum, "channel %d", i);
    }
    CHECK(!budget_keeps(&setup, &frame, 0), "1420 A passed for 65 A");
    memset(frame.sum, 0, sizeof frame.sum);
    setup.dimmers = DIMMERS;
    for (int i = 0; i < DIMMERS; i++) {
        setup.dimmer[i].full_mA = 65535;
        frame.duty[i] = 65535;
    }
    CHECK(!budget_keeps(&setup, &frame, 0), "six times 65 A passed for 65 A");
}

static void sums_are_those_of_the_bytes(void)
{
    for (int round = 0; round < 200; round++) {
        any_setup();
        fill(chance(2) ? any : full);
        for (uint8_t channel = 0; channel < setup.channels; channel++) {
            uint32_t sum = 0;
            for (uint16_t i = channel; i < frame.length; i = (uint16_t)(i + setup.channels))
                sum += frame.bytes[i];
            CHECK(frame_sum(&frame, channel) == sum, "round %d channel %u: %u", round, channel, frame_sum(&frame, channel));
        }
    }
}

void clamp_tests(void)
{
    RUN(sums_are_those_of_the_bytes);
    RUN(budget_passes_nothing_that_is_over);
    RUN(budget_passes_what_is_well_within);
    RUN(budget_holds_the_largest_numbers);
    RUN(worked_example);
    RUN(frame_at_the_ceiling_is_left_alone);
    RUN(strip_that_is_over_by_itself_is_dark);
    RUN(dark_current_is_rounded_up);
    RUN(dark_current_that_is_too_large_to_tell_is_the_most);
    RUN(formula_is_exact_and_the_ceiling_holds);
}
