/**
 * From one frame to the next: strip and dimmers of one supply change one after the other, and the sum is within the ceiling at every moment
 * in between. The strip counts with what it shows and, from the drive on, with what it may show already.
 */
#include <string.h>

#include "chance.h"
#include "check.h"
#include "draw.h"
#include "host.h"
#include "tests.h"

#define PIXELS_MOST 40

static struct setup setup;
static int looks;

static void nothing_is_over(void)
{
    CHECK(draw_within(&setup, bench.shown, bench.duty), "as it shows, %f mA", draw_mA(&setup, bench.shown, bench.duty, 0));
    CHECK(draw_within(&setup, bench.strip, bench.duty), "as it will show, %f mA", draw_mA(&setup, bench.strip, bench.duty, 0));
    looks++;
}

/* The strip and `dimmers` dimmers on the one supply, each of which can take most of the ceiling alone. */
static void start(uint16_t pixels, uint16_t ceiling_mA, uint8_t dimmers)
{
    struct body body = host_setup_of(pixels, ceiling_mA, 2);
    body.bytes[body.length - 1] = dimmers;
    for (int i = 0; i < dimmers; i++) {
        body_byte(&body, 0);
        body_number(&body, (uint16_t)(ceiling_mA / (1 + chance(3))));
        body_number(&body, (uint16_t)chance(65536));
    }
    bench_start();
    CHECK(setup_read(&setup, body.bytes, (uint16_t)body.length).code == COMPLAINT_NONE, "set-up");
    host_ask(0x02, 1, body.bytes, body.length, 0x82);
    bench.changed = nothing_is_over;
}

static void send(uint8_t strip, const uint16_t *duty)
{
    uint8_t bytes[3 * PIXELS_MOST];
    size_t count = setup_strip_bytes(&setup);
    memset(bytes, strip, count);
    struct body body = host_frame(0, true, duty, setup.dimmers, bytes, count);
    host_send(0x03, 1, body.bytes, body.length);
}

static void dimmers_fall_before_the_strip_is_driven(void)
{
    start(30, 1150, 1);
    send(0, (const uint16_t[]){ 65535 });
    bench_settle();
    CHECK(bench.duty[0] > 20000, "%u", bench.duty[0]);
    send(255, (const uint16_t[]){ 0 });
    CHECK(!bench.latched && bench.strip[0] == 255, "%u", bench.strip[0]);
    CHECK(bench.duty[0] == 0, "%u", bench.duty[0]);
}

static void dimmers_rise_after_the_strip_has_latched(void)
{
    start(30, 1150, 1);
    send(255, (const uint16_t[]){ 0 });
    bench_settle();
    send(0, (const uint16_t[]){ 65535 });
    CHECK(bench.strip[0] == 0 && bench.shown[0] == 255, "%u", bench.shown[0]);
    controller_tick(&bench.controller, bench.now_ms);
    CHECK(bench.duty[0] == 0, "%u", bench.duty[0]);
    bench_settle();
    CHECK(bench.duty[0] > 20000, "%u", bench.duty[0]);
}

/* Frames that arrive before the previous one has latched: a dimmer that keeps rising is not held down for ever. */
static void dimmers_rise_under_frames_without_a_pause(void)
{
    start(1, 5000, 1);
    for (uint16_t duty = 1000; duty < 60000; duty = (uint16_t)(duty + 1000))
        send(0, (const uint16_t[]){ duty });
    CHECK(bench.duty[0] >= 58000, "%u", bench.duty[0]);
}

static uint8_t any_strip(void)
{
    return (uint8_t)(chance(3) == 0 ? 255 : chance(2) * chance(256));
}

static void any_frame(void)
{
    uint16_t duty[DIMMERS];
    for (int i = 0; i < DIMMERS; i++)
        duty[i] = (uint16_t)(chance(3) == 0 ? 65535 : chance(2) * chance(65536));
    send(any_strip(), duty);
    if (chance(2) == 0)
        bench_settle();
    if (chance(10) == 0)
        bench_wait(3000 + chance(3000));
}

static void no_change_is_over_the_ceiling(void)
{
    looks = 0;
    for (int round = 0; round < 200; round++) {
        uint16_t pixels = (uint16_t)(1 + chance(PIXELS_MOST));
        start(pixels, (uint16_t)(pixels + 10 + chance(37u * pixels)), (uint8_t)chance(DIMMERS + 1));
        for (int i = 0; i < 20; i++)
            any_frame();
    }
    CHECK(looks > 10000, "%d looks", looks);
}

void change_tests(void)
{
    RUN(dimmers_fall_before_the_strip_is_driven);
    RUN(dimmers_rise_after_the_strip_has_latched);
    RUN(dimmers_rise_under_frames_without_a_pause);
    RUN(no_change_is_over_the_ceiling);
}
