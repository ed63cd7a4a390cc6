/** The dialogue: every message, every complaint, the counters (wire.md sections 2 and 3). */
#include <string.h>

#include "check.h"
#include "host.h"
#include "limits.h"
#include "tests.h"
#include "vectors.h"

static void set_up(void)
{
    struct body body = host_setup_small();
    bench_start();
    host_ask(0x02, 1, body.bytes, body.length, 0x82);
}

static struct packet ask_frame(uint8_t sequence, uint8_t value)
{
    uint8_t bytes[6];
    memset(bytes, value, sizeof bytes);
    struct body body = host_frame(0, true, NULL, 0, bytes, sizeof bytes);
    return host_ask(0x03, sequence, body.bytes, body.length, 0x83);
}

/* The vector's HERE, except for the firmware's version and what this board has room for. */
static void here_says_what_the_board_has(void)
{
    bench_start();
    struct packet here = host_ask(0x01, 1, (const uint8_t[]){ 1 }, 1, 0x81);
    const struct packet *like = &vectors_find("here")->packet;
    CHECK(here.length == 23 && like->length == 21, "%zu", here.length);
    static const uint8_t firmware[] = FIRMWARE_VERSION;
    CHECK(here.body[0] == like->body[0], "version %u", here.body[0]);
    CHECK(memcmp(here.body + 1, firmware, 3) == 0 && memcmp(firmware, like->body + 1, 3) > 0, "firmware");
    CHECK(memcmp(here.body + 4, like->body + 4, 8) == 0, "id");
    CHECK(host_number(here.body + 12) == STORE_BYTES / 3, "%u", host_number(here.body + 12));
    CHECK(host_number(here.body + 14) == PACKET_MOST, "%u", host_number(here.body + 14));
    CHECK(here.body[16] == DIMMERS && here.body[17] == 1, "%u", here.body[16]);
    CHECK(host_number(here.body + 18) == 10000 && here.body[20] == 0, "%u", host_number(here.body + 18));
    CHECK(here.body[21] == 1, "%u data lines", here.body[21]);
    CHECK(here.body[22] == vectors_find("here_after_the_watchdog")->packet.body[22], "%u", here.body[22]);
}

static void all_is_dark_and_then_here_is_said_unasked(void)
{
    struct packet here;
    memset(&bench, 0, sizeof bench);
    memset(bench.strip, 99, sizeof bench.strip);
    memset(bench.duty, 99, sizeof bench.duty);
    controller_start(&bench.controller);
    CHECK(bench.sent_count == 0, "%zu bytes sent before the board listens", bench.sent_count);
    CHECK(bench.drives == 1 && bench.strip_length == STORE_BYTES, "%u", bench.strip_length);
    for (int i = 0; i < STORE_BYTES; i++)
        CHECK(bench.strip[i] == 0, "byte %d is %u", i, bench.strip[i]);
    for (int i = 0; i < DIMMERS; i++)
        CHECK(bench.duty[i] == 0, "dimmer %d is %u", i, bench.duty[i]);
    controller_greet();
    CHECK(host_receive(&here) && here.type == 0x81 && here.sequence == 0, "type %02x", here.type);
}

/* HELLO may grow at the end. */
static void longer_hello_is_answered(void)
{
    static const uint8_t hello[200] = { 1, 7, 7 };
    bench_start();
    host_ask(0x01, 200, hello, sizeof hello, 0x81);
}

static void other_versions_are_refused(void)
{
    uint16_t detail;
    bench_start();
    CHECK(host_complaint(0x01, 1, (const uint8_t[]){ 2 }, 1, &detail) == 4, "version 2");
    CHECK(detail == 1, "%u", detail);
    CHECK(host_complaint(0x01, 1, (const uint8_t[]){ 0 }, 1, &detail) == 4, "version 0");
    CHECK(host_complaint(0x01, 1, NULL, 0, &detail) == 6, "no version");
    CHECK(detail == 1, "%u", detail);
}

static void unknown_types_are_refused(void)
{
    uint16_t detail;
    set_up();
    for (int type = 0; type < 256; type++) {
        if (type >= 0x01 && type <= 0x04)
            continue;
        CHECK(host_complaint((uint8_t)type, 3, NULL, 0, &detail) == 3, "type %02x", type);
        CHECK(detail == type, "type %02x: %u", type, detail);
    }
}

static void nothing_is_shown_before_a_setup(void)
{
    uint16_t detail;
    struct body body = host_frame(0, true, NULL, 0, (const uint8_t[]){ 1, 2, 3 }, 3);
    bench_start();
    CHECK(host_complaint(0x03, 1, body.bytes, body.length, &detail) == 5 && detail == 0, "FRAME: %u", detail);
    CHECK(host_complaint(0x03, 2, body.bytes, 3, &detail) == 5 && detail == 0, "FRAME of nothing: %u", detail);
    CHECK(host_complaint(0x04, 3, (const uint8_t[]){ 0 }, 1, &detail) == 5 && detail == 0, "REST: %u", detail);
    bench_wait(70000);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
}

static void setup_is_echoed_and_drives_nothing(void)
{
    const struct packet *two = &vectors_find("setup_two_supplies")->packet;
    bench_start();
    struct packet in_force = host_ask(0x02, 77, two->body, two->length, 0x82);
    CHECK(in_force.length == two->length, "%zu", in_force.length);
    CHECK(memcmp(in_force.body, two->body, two->length) == 0, "another body");
    CHECK(bench.drives == 0, "%d drives", bench.drives);
}

static void refused_setup_changes_nothing(void)
{
    uint16_t detail;
    struct body body = host_setup_small();
    set_up();
    body.bytes[2] = 9;
    CHECK(host_complaint(0x02, 2, body.bytes, body.length, &detail) == 7, "channels 9");
    CHECK(host_complaint(0x02, 3, body.bytes, 10, &detail) == 6, "ten bytes");
    struct packet shown = ask_frame(4, 50);
    CHECK(shown.body[0] == 1 && bench.strip_length == 6, "%u", bench.strip_length);
}

static void frame_is_answered_with_the_counters(void)
{
    const struct packet *like = &vectors_find("shown")->packet;
    set_up();
    struct packet shown = ask_frame(4, 10);
    CHECK(shown.length == like->length && memcmp(shown.body, like->body, like->length) == 0, "another SHOWN");
}

static void sequence_runs_over(void)
{
    set_up();
    for (int sequence = 0; sequence < 600; sequence++)
        ask_frame((uint8_t)sequence, (uint8_t)sequence);
}

static void dimmed_frames_are_told_and_counted(void)
{
    struct body body = host_setup_of(2, 50, 2);
    bench_start();
    host_ask(0x02, 1, body.bytes, body.length, 0x82);
    for (int i = 1; i <= 3; i++) {
        struct packet shown = ask_frame((uint8_t)i, 255);
        CHECK(shown.body[0] == 2, "%u", shown.body[0]);
        CHECK(host_number(shown.body + 5) == i, "%u", host_number(shown.body + 5));
        CHECK(bench.strip[0] == 169, "%u", bench.strip[0]);
    }
    struct packet shown = ask_frame(4, 10);
    CHECK(shown.body[0] == 1 && host_number(shown.body + 5) == 3, "%u", shown.body[0]);
}

/* Code 9 comes after IN_FORCE, with its sequence number, and every frame is shown dark. */
static void dark_strip_over_the_ceiling_is_told(void)
{
    struct packet got;
    struct body body = host_setup_of(2, 1, 2);
    bench_start();
    host_send(0x02, 5, body.bytes, body.length);
    CHECK(host_receive(&got) && got.type == 0x82 && got.sequence == 5, "%02x", got.type);
    CHECK(host_receive(&got) && got.type == 0x84 && got.sequence == 5, "%02x", got.type);
    CHECK(got.body[0] == 9 && host_number(got.body + 1) == 2, "code %u, %u mA", got.body[0], host_number(got.body + 1));
    struct packet shown = ask_frame(6, 255);
    CHECK(shown.body[0] == 2 && bench.strip[0] == 0, "%u", bench.strip[0]);
}

static void broken_packets_are_told_and_counted(void)
{
    struct packet got;
    const struct vector *flipped = vectors_find("flipped_bit");
    set_up();
    ask_frame(42, 1);
    bench_forget();
    bench_line(flipped->wire, flipped->count, 3);
    CHECK(host_receive(&got) && got.type == 0x84 && got.sequence == 42, "type %02x sequence %u", got.type, got.sequence);
    CHECK(got.body[0] == 1 && host_number(got.body + 1) == flipped->count - 1, "code %u", got.body[0]);
    struct packet shown = ask_frame(43, 1);
    CHECK(host_number(shown.body + 1) == 1, "%u", host_number(shown.body + 1));
}

static void too_long_packets_are_told_and_not_counted(void)
{
    static const uint8_t body[PACKET_MOST];
    struct packet got;
    set_up();
    bench_forget();
    host_send(0x03, 9, body, PACKET_MOST - 3);
    CHECK(host_receive(&got) && got.type == 0x84 && got.body[0] == 2, "type %02x", got.type);
    CHECK(host_number(got.body + 1) == PACKET_MOST, "%u", host_number(got.body + 1));
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    struct packet shown = ask_frame(10, 1);
    CHECK(host_number(shown.body + 1) == 0, "%u", host_number(shown.body + 1));
}

/* Counted once per packet, and that packet is broken even if its checksum happens to be right. */
static void overruns_are_counted_once_a_packet(void)
{
    const struct vector *frame = vectors_find("frame_two_pixels");
    set_up();
    bench_line(frame->wire, 5, 5);
    controller_overrun(&bench.controller);
    controller_overrun(&bench.controller);
    bench_line(frame->wire + 5, frame->count - 5, 5);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    struct packet shown = ask_frame(1, 1);
    CHECK(host_number(shown.body + 3) == 1, "%u", host_number(shown.body + 3));
    CHECK(host_number(shown.body + 1) == 1, "%u", host_number(shown.body + 1));
}

/* Lost between two packets: what follows is the end of one, and broken even if it looks like a whole one. */
static void overrun_between_packets_breaks_the_next(void)
{
    struct packet got;
    const struct vector *frame = vectors_find("frame_two_pixels");
    set_up();
    controller_overrun(&bench.controller);
    bench_forget();
    bench_line(frame->wire, frame->count, 5);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    CHECK(host_receive(&got) && got.type == 0x84 && got.body[0] == 1, "type %02x", got.type);
    struct packet shown = ask_frame(5, 1);
    CHECK(host_number(shown.body + 3) == 1, "%u overruns", host_number(shown.body + 3));
    CHECK(host_number(shown.body + 1) == 1, "%u broken", host_number(shown.body + 1));
}

static void rest_is_answered_and_checked(void)
{
    uint16_t detail;
    set_up();
    struct packet shown = host_ask(0x04, 10, (const uint8_t[]){ 0 }, 1, 0x83);
    CHECK(shown.body[0] == 3, "%u", shown.body[0]);
    CHECK(host_complaint(0x04, 11, (const uint8_t[]){ 3 }, 1, &detail) == 7 && detail == 0, "%u", detail);
    CHECK(host_complaint(0x04, 12, NULL, 0, &detail) == 6 && detail == 1, "%u", detail);
}

/* Whatever the host sends, each message is answered once. */
static void vector_is_answered_once(const struct vector *vector)
{
    struct packet got;
    struct packet surplus;
    set_up();
    bench_forget();
    bench_line(vector->wire, vector->count, 30);
    CHECK(host_receive(&got), "%s", vector->name);
    CHECK(!vector->good || got.sequence == vector->packet.sequence, "%s", vector->name);
    CHECK(!host_receive(&surplus), "%s: a second answer, of type %02x", vector->name, surplus.type);
}

static void every_vector_is_answered_once(void)
{
    vectors_each(vector_is_answered_once);
}

void controller_tests(void)
{
    RUN(here_says_what_the_board_has);
    RUN(all_is_dark_and_then_here_is_said_unasked);
    RUN(longer_hello_is_answered);
    RUN(other_versions_are_refused);
    RUN(unknown_types_are_refused);
    RUN(nothing_is_shown_before_a_setup);
    RUN(setup_is_echoed_and_drives_nothing);
    RUN(refused_setup_changes_nothing);
    RUN(frame_is_answered_with_the_counters);
    RUN(sequence_runs_over);
    RUN(dimmed_frames_are_told_and_counted);
    RUN(dark_strip_over_the_ceiling_is_told);
    RUN(broken_packets_are_told_and_counted);
    RUN(too_long_packets_are_told_and_not_counted);
    RUN(overruns_are_counted_once_a_packet);
    RUN(overrun_between_packets_breaks_the_next);
    RUN(rest_is_answered_and_checked);
    RUN(every_vector_is_answered_once);
}
