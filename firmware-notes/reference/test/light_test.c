/** Without a host: holdover, beacon, rest, and set-ups that change while the strip is lit (wire.md sections 3 and 5). */
#include <string.h>

#include "check.h"
#include "draw.h"
#include "host.h"
#include "tests.h"

#define PIXELS 20
#define BYTES (3 * PIXELS)
#define HOLDOVER_MS 3000

/* 20 pixels in GRB order and two dimmers on supply 0, that go to 0 and 6553 without a host. */
static struct body setup_of(uint16_t ceiling_mA, uint8_t after)
{
    struct body body = host_setup_of(PIXELS, ceiling_mA, after);
    body.bytes[body.length - 1] = 2;
    for (int i = 0; i < 2; i++) {
        body_byte(&body, 0);
        body_number(&body, 100);
        body_number(&body, i == 0 ? 0 : 6553);
    }
    return body;
}

static void set_up(uint16_t ceiling_mA, uint8_t after)
{
    struct body body = setup_of(ceiling_mA, after);
    host_ask(0x02, 1, body.bytes, body.length, 0x82);
}

static void show(uint8_t value)
{
    uint8_t bytes[BYTES];
    memset(bytes, value, sizeof bytes);
    struct body body = host_frame(0, true, (const uint16_t[]){ 1000, 2000 }, 2, bytes, BYTES);
    host_ask(0x03, 2, body.bytes, body.length, 0x83);
    CHECK(bench.strip[0] == value && bench.duty[1] == 2000, "%u", bench.strip[0]);
    bench_forget();
}

static void start(uint8_t after)
{
    bench_start();
    set_up(1500, after);
    show(77);
}

static void strip_is_dark(void)
{
    for (int i = 0; i < bench.strip_length; i++)
        CHECK(bench.strip[i] == 0, "byte %d is %u", i, bench.strip[i]);
}

/* Pixels 0, 8 and 16 in R 16, G 6, B 0; the rest dark. */
static void strip_is_the_beacon(void)
{
    static const uint8_t amber[3] = { 6, 16, 0 };
    for (int pixel = 0; pixel < PIXELS; pixel++)
        for (int i = 0; i < 3; i++)
            CHECK(bench.strip[3 * pixel + i] == (pixel % 8 == 0 ? amber[i] : 0), "pixel %d channel %d", pixel, i);
}

static void duties_are_for_afterwards(void)
{
    CHECK(bench.duty[0] == 0 && bench.duty[1] == 6553, "%u %u", bench.duty[0], bench.duty[1]);
}

static void frames_keep_the_holdover_off(void)
{
    start(2);
    for (int i = 0; i < 10; i++) {
        bench_wait(HOLDOVER_MS - 1);
        CHECK(bench.drives == 0, "%d drives", bench.drives);
        show(5);
    }
}

static void dark_after_the_holdover(void)
{
    start(0);
    bench_wait(HOLDOVER_MS - 1);
    CHECK(bench.drives == 0, "%d drives too early", bench.drives);
    bench_wait(1);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
    strip_is_dark();
    duties_are_for_afterwards();
    bench_wait(200000);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
}

static void last_frame_after_the_holdover(void)
{
    start(1);
    bench_wait(200000);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    CHECK(bench.strip[0] == 77 && bench.duty[0] == 1000, "%u", bench.strip[0]);
}

/* One second on, three off. */
static void beacon_after_the_holdover(void)
{
    start(2);
    bench_wait(HOLDOVER_MS);
    for (int turn = 0; turn < 5; turn++) {
        strip_is_the_beacon();
        duties_are_for_afterwards();
        bench_forget();
        bench_wait(999);
        CHECK(bench.drives == 0, "turn %d: off too early", turn);
        bench_wait(1);
        CHECK(bench.drives == 1, "turn %d: %d drives", turn, bench.drives);
        strip_is_dark();
        bench_forget();
        bench_wait(2999);
        CHECK(bench.drives == 0, "turn %d: on too early", turn);
        bench_wait(1);
    }
    show(9);
    bench_wait(HOLDOVER_MS - 1);
    CHECK(bench.drives == 0, "the beacon went on after a frame");
}

static void clock_may_run_over(void)
{
    bench_start();
    bench.now_ms = UINT32_MAX - 1000;
    bench_wait(1);
    set_up(1500, 2);
    show(3);
    bench_wait(HOLDOVER_MS - 1);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    bench_wait(1);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
}

static void beacon_keeps_the_ceiling(void)
{
    struct body body = setup_of(25, 2);
    struct setup setup;
    bench_start();
    setup_read(&setup, body.bytes, (uint16_t)body.length);
    host_ask(0x02, 1, body.bytes, body.length, 0x82);
    bench_wait(HOLDOVER_MS);
    CHECK(bench.drives == 1 && bench.strip[1] > 0 && bench.strip[1] < 16, "red %u", bench.strip[1]);
    CHECK(bench.duty[1] < 6553, "%u", bench.duty[1]);
    CHECK(draw_within(&setup, bench.strip, bench.duty), "%f mA", draw_mA(&setup, bench.strip, bench.duty, 0));
}

static void setup_starts_the_holdover_anew(void)
{
    start(0);
    bench_wait(HOLDOVER_MS - 1);
    set_up(1500, 0);
    bench_wait(HOLDOVER_MS - 1);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    bench_wait(1);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
}

static void hello_and_refused_frames_do_not(void)
{
    uint16_t detail;
    start(0);
    bench_wait(HOLDOVER_MS - 1);
    host_ask(0x01, 3, (const uint8_t[]){ 1 }, 1, 0x81);
    host_complaint(0x03, 4, (const uint8_t[]){ 0, 9, 1, 1 }, 4, &detail);
    bench_wait(1);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
}

static void rest(uint8_t what)
{
    bench_forget();
    struct packet shown = host_ask(0x04, 9, &what, 1, 0x83);
    CHECK(shown.body[0] == 3, "%u", shown.body[0]);
}

static void rest_dark_stays(void)
{
    start(2);
    rest(0);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
    strip_is_dark();
    duties_are_for_afterwards();
    bench_wait(200000);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
}

static void rest_keep_stays(void)
{
    start(2);
    rest(1);
    bench_wait(200000);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    CHECK(bench.duty[0] == 1000 && bench.duty[1] == 2000, "%u", bench.duty[0]);
}

static void rest_beacon_turns(void)
{
    start(0);
    rest(2);
    strip_is_the_beacon();
    duties_are_for_afterwards();
    bench_wait(1000);
    strip_is_dark();
}

static void frame_ends_a_rest(void)
{
    start(0);
    rest(0);
    show(8);
    bench_wait(HOLDOVER_MS);
    CHECK(bench.drives == 1, "%d drives: no holdover after a rest", bench.drives);
}

/* A different set-up has no last frame yet: what is kept is dark, or it might be over the new ceiling. */
static void nothing_of_another_setup_is_kept(void)
{
    start(1);
    set_up(50, 1);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    bench_wait(HOLDOVER_MS);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
    strip_is_dark();
}

/* Pixels and dimmers that a new set-up drops do not stay lit. */
static void what_a_setup_leaves_out_goes_dark(void)
{
    struct body body = host_setup_of(2, 1500, 0);
    start(1);
    host_ask(0x02, 3, body.bytes, body.length, 0x82);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    body = host_frame(0, true, NULL, 0, (const uint8_t[]){ 1, 2, 3, 4, 5, 6 }, 6);
    host_ask(0x03, 4, body.bytes, body.length, 0x83);
    CHECK(bench.strip_length == BYTES, "%u", bench.strip_length);
    CHECK(bench.strip[5] == 6 && bench.strip[6] == 0 && bench.strip[BYTES - 1] == 0, "%u", bench.strip[6]);
    CHECK(bench.duty[0] == 0 && bench.duty[1] == 0, "%u", bench.duty[0]);
    host_ask(0x03, 5, body.bytes, body.length, 0x83);
    CHECK(bench.strip_length == 6, "%u", bench.strip_length);
}

/* The holdover waits briefly for a packet that is coming in, and shows it. */
static void packet_under_way_is_waited_for(void)
{
    uint8_t wire[HOST_WIRE_MOST];
    uint8_t bytes[BYTES] = { 4 };
    start(0);
    struct body body = host_frame(0, true, (const uint16_t[]){ 1, 2 }, 2, bytes, BYTES);
    size_t count = host_write(wire, 0x03, 7, body.bytes, body.length);
    bench_wait(HOLDOVER_MS - 5);
    bench_line(wire, count / 2, 9);
    bench_wait(100);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    bench_line(wire + count / 2, count - count / 2, 9);
    CHECK(bench.drives == 1 && bench.strip[0] == 4, "%d drives", bench.drives);
}

/* It does not wait for ever; then the store is gone, and the rest of the packet is refused. */
static void stuck_packet_is_given_up(void)
{
    struct packet got;
    uint8_t wire[HOST_WIRE_MOST];
    uint8_t bytes[BYTES] = { 4 };
    start(0);
    struct body body = host_frame(0, true, (const uint16_t[]){ 1, 2 }, 2, bytes, BYTES);
    size_t count = host_write(wire, 0x03, 7, body.bytes, body.length);
    bench_wait(HOLDOVER_MS - 5);
    bench_line(wire, count / 2, 9);
    bench_wait(5 + PATIENCE_MS);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
    strip_is_dark();
    bench_line(wire + count / 2, count - count / 2, 9);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
    CHECK(host_receive(&got) && got.type == 0x84 && got.body[0] == 8, "type %02x code %u", got.type, got.body[0]);
    CHECK(host_number(got.body + 1) == 0, "%u", host_number(got.body + 1));
    show(6);
}

static void white_keeps_out_of_the_beacon(void)
{
    struct body body = host_setup_of(1, 1500, 2);
    bench_start();
    body.bytes[2] = 4;
    memcpy(body.bytes + 3, "WBGR", 4);
    host_ask(0x02, 1, body.bytes, body.length, 0x82);
    bench_wait(HOLDOVER_MS);
    CHECK(memcmp(bench.strip, (const uint8_t[]){ 0, 0, 6, 16 }, 4) == 0, "%u %u", bench.strip[2], bench.strip[3]);
}

void light_tests(void)
{
    RUN(frames_keep_the_holdover_off);
    RUN(dark_after_the_holdover);
    RUN(last_frame_after_the_holdover);
    RUN(beacon_after_the_holdover);
    RUN(clock_may_run_over);
    RUN(beacon_keeps_the_ceiling);
    RUN(setup_starts_the_holdover_anew);
    RUN(hello_and_refused_frames_do_not);
    RUN(rest_dark_stays);
    RUN(rest_keep_stays);
    RUN(rest_beacon_turns);
    RUN(frame_ends_a_rest);
    RUN(nothing_of_another_setup_is_kept);
    RUN(what_a_setup_leaves_out_goes_dark);
    RUN(packet_under_way_is_waited_for);
    RUN(stuck_packet_is_given_up);
    RUN(white_keeps_out_of_the_beacon);
}
