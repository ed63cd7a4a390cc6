/**
 * Frames in one part and in many, and parts that are refused (wire.md section 3, FRAME).
 */
#include <string.h>

#include "chance.h"
#include "check.h"
#include "host.h"
#include "tests.h"
#include "vectors.h"

#define PIXELS 8
#define BYTES (3 * PIXELS)

static uint8_t picture[BYTES];
static uint8_t sequence;

static void start(void)
{
    struct body body = host_setup_of(PIXELS, 1500, 2);
    bench_start();
    sequence = (uint8_t)chance(256);
    host_ask(0x02, sequence, body.bytes, body.length, 0x82);
    for (int i = 0; i < BYTES; i++)
        picture[i] = (uint8_t)(10 * i + 1);
}

static struct packet ask_part(uint16_t offset, bool last, size_t count)
{
    struct body body = host_frame(offset, last, NULL, 0, picture + offset, count);
    return host_ask(0x03, ++sequence, body.bytes, body.length, 0x83);
}

static void part_is_taken(uint16_t offset, size_t count)
{
    bench_forget();
    struct packet shown = ask_part(offset, false, count);
    CHECK(shown.body[0] == 0, "%u", shown.body[0]);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
}

static void last_part_is_shown(uint16_t offset, size_t count)
{
    bench_forget();
    struct packet shown = ask_part(offset, true, count);
    CHECK(shown.body[0] == 1, "%u", shown.body[0]);
    CHECK(bench.drives == 1, "%d drives", bench.drives);
    CHECK(bench.strip_length == BYTES, "%u", bench.strip_length);
    CHECK(memcmp(bench.strip, picture, BYTES) == 0, "another picture");
}

static void part_is_refused(uint16_t offset, uint8_t flags, size_t count, uint8_t code, uint16_t detail)
{
    static const uint8_t bytes[2 * BYTES];
    uint16_t told;
    bench_forget();
    struct body body = host_frame(offset, false, NULL, 0, bytes, count);
    body.bytes[2] = flags;
    uint8_t got = host_complaint(0x03, ++sequence, body.bytes, body.length, &told);
    CHECK(got == code, "code %u, not %u", got, code);
    CHECK(told == detail, "detail %u, not %u", told, detail);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
}

static void whole_frame_is_shown(void)
{
    start();
    last_part_is_shown(0, BYTES);
}

static void parts_are_shown_at_once_with_the_last(void)
{
    start();
    part_is_taken(0, 5);
    part_is_taken(5, 10);
    last_part_is_shown(15, BYTES - 15);
    part_is_taken(0, BYTES);
    last_part_is_shown(BYTES, 0);
    part_is_taken(0, 0);
    last_part_is_shown(0, BYTES);
}

/* Every way to split the picture in three. */
static void any_cut_will_do(void)
{
    start();
    for (uint16_t one = 0; one <= BYTES; one++) {
        for (uint16_t two = one; two <= BYTES; two++) {
            part_is_taken(0, one);
            part_is_taken(one, (size_t)(two - one));
            last_part_is_shown(two, (size_t)(BYTES - two));
        }
    }
}

static void offset_zero_begins_anew(void)
{
    start();
    part_is_taken(0, 7);
    last_part_is_shown(0, BYTES);
    part_is_taken(0, 7);
    part_is_taken(0, 9);
    last_part_is_shown(9, BYTES - 9);
}

/* Refused, and so are all that follow until an offset 0; the right offset is 0 from then on. */
static void part_out_of_order_ends_the_frame(void)
{
    start();
    part_is_taken(0, 6);
    part_is_refused(7, 0, 2, 8, 6);
    part_is_refused(6, 0, 2, 8, 0);
    part_is_refused(9, 1, BYTES - 9, 8, 0);
    last_part_is_shown(0, BYTES);
}

static void last_part_cannot_come_twice(void)
{
    start();
    part_is_taken(0, 6);
    last_part_is_shown(6, BYTES - 6);
    part_is_refused(6, 1, BYTES - 6, 8, 0);
}

static void wrong_lengths_are_told(void)
{
    start();
    part_is_refused(0, 1, BYTES - 1, 6, BYTES);
    part_is_refused(0, 1, BYTES + 1, 6, BYTES);
    part_is_refused(0, 0, BYTES + 1, 6, BYTES);
    part_is_taken(0, 20);
    part_is_refused(20, 0, 5, 6, 4);
    part_is_refused(20, 1, 4, 8, 0);
    part_is_taken(0, 20);
    part_is_refused(20, 1, 3, 6, 4);
    last_part_is_shown(0, BYTES);
}

static void unknown_flags_are_refused(void)
{
    start();
    part_is_refused(0, 3, BYTES, 7, 2);
    part_is_refused(0, 0x80, BYTES, 7, 2);
}

/* No head, or part of one; after whole frames, so that nothing left over from them is shown again. */
static void short_heads_are_told(void)
{
    start();
    last_part_is_shown(0, BYTES);
    for (size_t length = 0; length < 3; length++) {
        static const uint8_t head[] = { 0, 0, 1 };
        uint16_t detail;
        bench_forget();
        CHECK(host_complaint(0x03, 1, head, length, &detail) == 6, "%zu bytes", length);
        CHECK(detail == BYTES, "%zu bytes: %u", length, detail);
        CHECK(bench.drives == 0, "%zu bytes: %d drives", length, bench.drives);
    }
}

static void broken_packet_ends_the_frame(void)
{
    const struct vector *flipped = vectors_find("flipped_bit");
    start();
    part_is_taken(0, 6);
    bench_line(flipped->wire, flipped->count, 9);
    part_is_refused(6, 1, BYTES - 6, 8, 0);
    last_part_is_shown(0, BYTES);
}

/* A broken part may have written into the store; nothing of it is ever shown. */
static void broken_part_is_never_shown(void)
{
    uint8_t wire[HOST_WIRE_MOST];
    uint8_t white[BYTES];
    start();
    memset(white, 255, BYTES);
    last_part_is_shown(0, BYTES);
    struct body body = host_frame(0, true, NULL, 0, white, BYTES);
    size_t count = host_write(wire, 0x03, 7, body.bytes, body.length);
    wire[count - 2] ^= 0x40;
    bench_forget();
    bench_line(wire, count, 9);
    CHECK(bench.drives == 0, "%d drives", bench.drives);
    bench_wait(3000);
    CHECK(bench.drives == 1, "%d drives after the holdover", bench.drives);
    CHECK(bench.strip[3] == 0, "white in the beacon");
}

static void other_messages_do_not_end_the_frame(void)
{
    struct body body = host_setup_of(PIXELS, 1500, 2);
    start();
    part_is_taken(0, 6);
    host_ask(0x01, ++sequence, (const uint8_t[]){ 1 }, 1, 0x81);
    host_ask(0x02, ++sequence, body.bytes, body.length, 0x82);
    last_part_is_shown(6, BYTES - 6);
}

/* Whatever was lost may have been the first part of another frame: wire.md section 3. */
static void lost_message_ends_the_frame(void)
{
    start();
    part_is_taken(0, 6);
    sequence++;
    part_is_refused(6, 1, BYTES - 6, 8, 0);
    part_is_taken(0, 6);
    sequence++;
    host_ask(0x01, ++sequence, (const uint8_t[]){ 1 }, 1, 0x81);
    part_is_refused(6, 1, BYTES - 6, 8, 0);
    part_is_taken(0, 6);
    sequence--;
    part_is_refused(6, 1, BYTES - 6, 8, 0);
    sequence += 100;
    last_part_is_shown(0, BYTES);
}

static void another_setup_ends_the_frame(void)
{
    struct body body = host_setup_of(PIXELS + 1, 1500, 2);
    start();
    part_is_taken(0, 6);
    host_ask(0x02, ++sequence, body.bytes, body.length, 0x82);
    part_is_refused(6, 1, BYTES - 6, 8, 0);
}

/* The vectors' frames under the vectors' set-ups. */
static void send_vector(const char *name, uint8_t answer, uint8_t first_byte)
{
    struct packet got;
    const struct vector *vector = vectors_find(name);
    bench_forget();
    bench_line(vector->wire, vector->count, 20);
    bench_settle();
    CHECK(host_receive(&got), "%s", name);
    CHECK(got.type == answer && got.body[0] == first_byte, "%s: %02x %u", name, got.type, got.body[0]);
    CHECK(got.sequence == vector->packet.sequence, "%s", name);
}

static void vector_frames_are_shown(void)
{
    static const uint8_t two[] = { 0, 255, 0, 16, 32, 64 };
    bench_start();
    send_vector("setup_small", 0x82, 0);
    send_vector("frame_two_pixels", 0x83, 1);
    CHECK(bench.strip_length == 6 && memcmp(bench.strip, two, 6) == 0, "%u", bench.strip_length);
}

static void vector_parts_are_shown(void)
{
    struct body body = host_setup_of(4, 1500, 2);
    bench_start();
    body.bytes[body.length - 1] = 2;
    for (int i = 0; i < 2; i++) {
        body_byte(&body, 0);
        body_number(&body, 10);
        body_number(&body, 0);
    }
    host_ask(0x02, 1, body.bytes, body.length, 0x82);
    send_vector("frame_first_part", 0x83, 0);
    send_vector("frame_last_part", 0x83, 1);
    CHECK(bench.strip_length == 12 && bench.strip[0] == 1 && bench.strip[11] == 12, "%u", bench.strip_length);
    CHECK(bench.duty[0] == 32768 && bench.duty[1] == 1, "%u %u", bench.duty[0], bench.duty[1]);
}

void parts_tests(void)
{
    RUN(whole_frame_is_shown);
    RUN(parts_are_shown_at_once_with_the_last);
    RUN(any_cut_will_do);
    RUN(offset_zero_begins_anew);
    RUN(part_out_of_order_ends_the_frame);
    RUN(last_part_cannot_come_twice);
    RUN(wrong_lengths_are_told);
    RUN(unknown_flags_are_refused);
    RUN(short_heads_are_told);
    RUN(broken_packet_ends_the_frame);
    RUN(broken_part_is_never_shown);
    RUN(other_messages_do_not_end_the_frame);
    RUN(lost_message_ends_the_frame);
    RUN(another_setup_ends_the_frame);
    RUN(vector_frames_are_shown);
    RUN(vector_parts_are_shown);
}
