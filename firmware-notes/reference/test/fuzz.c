/**
 * Arbitrary input to the controller, from libFuzzer. The first byte of each step selects what comes: raw bytes on the line, a packet with a
 * correct checksum, a valid set-up, a frame or a part of one, time, a loss of bytes, a rest. After each step nothing may be over the
 * ceiling in force, and everything that the controller sent must be whole packets.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "check.h"
#include "draw.h"
#include "host.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* The rest of the input. */
struct input {
    const uint8_t *bytes;
    size_t count;
};

/* What the controller last reported as in force. */
static struct setup in_force;
static bool is_set_up;

/* A failed check ends the run, so that the fuzzer keeps the input. */
void check_that(bool holds, const char *file, int line, const char *text, const char *format, ...)
{
    (void)format;
    if (holds)
        return;
    fprintf(stderr, "%s:%d: does not hold: %s\n", file, line, text);
    abort();
}

static uint8_t next(struct input *input)
{
    if (input->count == 0)
        return 0;
    input->count--;
    return *input->bytes++;
}

static const uint8_t *take(struct input *input, size_t *count)
{
    if (*count > input->count)
        *count = input->count;
    const uint8_t *bytes = input->bytes;
    input->bytes += *count;
    input->count -= *count;
    return bytes;
}

static void read_answers(void)
{
    struct packet packet;
    while (host_receive(&packet)) {
        CHECK(packet.type >= 0x81 && packet.type <= 0x84, "%02x", packet.type);
        if (packet.type != 0x82)
            continue;
        is_set_up = true;
        CHECK(setup_read(&in_force, packet.body, (uint16_t)packet.length).code == COMPLAINT_NONE, "IN_FORCE");
    }
}

static void unused_is_dark(void)
{
    for (int i = setup_strip_bytes(&in_force); i < bench.strip_length; i++)
        CHECK(bench.strip[i] == 0, "byte %d", i);
    for (int i = in_force.dimmers; i < DIMMERS; i++)
        CHECK(bench.duty[i] == 0, "dimmer %d", i);
}

static void look_at_the_light(void)
{
    if (bench.drives == 0)
        return;
    bench_settle();
    CHECK(is_set_up, "something is shown before a set-up");
    CHECK(bench.strip_length <= STORE_BYTES, "%u", bench.strip_length);
    CHECK(draw_within(&in_force, bench.strip, bench.duty), "over the ceiling");
    unused_is_dark();
    bench.drives = 0;
}

static void send_raw(struct input *input)
{
    size_t count = next(input);
    const uint8_t *bytes = take(input, &count);
    for (size_t i = 0; i < count; i++) {
        uint8_t byte = bytes[i];
        controller_take(&bench.controller, &byte, 1);
        read_answers();
        look_at_the_light();
    }
}

static uint16_t next_number(struct input *input)
{
    uint8_t high = next(input);
    return (uint16_t)(high << 8 | next(input));
}

static void send_any(struct input *input)
{
    uint8_t type = next(input) % 8;
    size_t count = next_number(input) % (PACKET_MOST + 10);
    const uint8_t *body = take(input, &count);
    host_send(type, next(input), body, count);
}

/* A set-up with every field in range, from numbers in the input. */
static void send_good_setup(struct input *input)
{
    uint8_t channels = 3 + next(input) % 2;
    uint8_t supplies = 1 + next(input) % SUPPLIES;
    uint8_t dimmers = next(input) % (DIMMERS + 1);
    struct body body = { { 0 }, 0 };
    body_number(&body, next_number(input) % (STORE_BYTES / channels + 1));
    body_byte(&body, channels);
    for (int i = 0; i < CHANNELS; i++)
        body_byte(&body, (uint8_t)(i < channels ? "BRGW"[i] : 0));
    for (int i = 0; i < CHANNELS; i++)
        body_number(&body, i < channels ? next_number(input) : 0);
    body_number(&body, next_number(input));
    body_byte(&body, next(input) % supplies);
    body_number(&body, (uint16_t)(100 + next_number(input) % 59901));
    body_byte(&body, next(input) % 3);
    body_byte(&body, supplies);
    for (int i = 0; i < supplies; i++)
        body_number(&body, next_number(input));
    body_byte(&body, dimmers);
    for (int i = 0; i < dimmers; i++) {
        body_byte(&body, next(input) % supplies);
        body_number(&body, next_number(input));
        body_number(&body, next_number(input));
    }
    host_send(0x02, next(input), body.bytes, body.length);
}

/* Usually the next one: what does not follow is refused. */
static uint8_t next_sequence(struct input *input)
{
    uint8_t chosen = next(input);
    return chosen % 8 == 0 ? chosen : (uint8_t)(bench.controller.last_sequence + 1);
}

/* A part of a frame, of `count` bytes that repeat the input. */
static void send_part(struct input *input, uint16_t offset, uint8_t flags, size_t count)
{
    struct body body = { { 0 }, 0 };
    size_t pattern_length = 1 + next(input) % 16;
    const uint8_t *pattern = take(input, &pattern_length);
    body_number(&body, offset);
    body_byte(&body, flags);
    if (offset == 0)
        count += 2u * in_force.dimmers;
    for (size_t i = 0; i < count; i++)
        body_byte(&body, pattern_length == 0 ? 0 : pattern[i % pattern_length]);
    host_send(0x03, next_sequence(input), body.bytes, body.length);
}

static void send_full_frame(struct input *input)
{
    send_part(input, 0, 1, setup_strip_bytes(&in_force));
}

static void send_any_part(struct input *input)
{
    uint16_t offset = bench.controller.parts.next;
    if (next(input) % 4 == 0)
        offset = next_number(input) % STORE_BYTES;
    send_part(input, offset, next(input) % 4 % 3, next_number(input) % (STORE_BYTES / 2));
}

static void pass_time(struct input *input)
{
    bench.now_ms += (uint32_t)next(input) * 32;
    controller_tick(&bench.controller, bench.now_ms);
}

static void lose_bytes(struct input *input)
{
    (void)input;
    controller_overrun(&bench.controller);
}

static void send_rest(struct input *input)
{
    uint8_t what = next(input) % 4;
    host_send(0x04, 1, &what, 1);
}

static void step(struct input *input)
{
    static void (*const steps[])(struct input *) = {
        send_raw, send_any, send_good_setup, send_full_frame, send_any_part, pass_time, lose_bytes, send_rest,
    };
    steps[next(input) % 8](input);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct input input = { data, size };
    memset(&in_force, 0, sizeof in_force);
    is_set_up = false;
    bench_start();
    while (input.count > 0) {
        step(&input);
        read_answers();
        look_at_the_light();
    }
    return 0;
}
