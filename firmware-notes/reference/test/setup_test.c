/**
 * Set-ups: read, echoed, refused (wire.md section 3, SETUP).
 */
#include <string.h>

#include "chance.h"
#include "check.h"
#include "host.h"
#include "setup.h"
#include "tests.h"
#include "vectors.h"

/* Reads a body as the controller would: never more than it keeps. */
static struct complaint read_body(struct setup *setup, const struct body *body)
{
    uint8_t kept[SETUP_MOST] = { 0 };
    memcpy(kept, body->bytes, body->length < SETUP_MOST ? body->length : SETUP_MOST);
    return setup_read(setup, kept, (uint16_t)body->length);
}

static struct body vector_body(const char *name)
{
    const struct vector *vector = vectors_find(name);
    struct body body = { { 0 }, vector->packet.length };
    memcpy(body.bytes, vector->packet.body, body.length);
    return body;
}

static struct body two_supplies(void)
{
    return vector_body("setup_two_supplies");
}

static void fields_are_read(void)
{
    struct body body = two_supplies();
    struct setup setup;
    struct complaint wrong = read_body(&setup, &body);
    CHECK(wrong.code == COMPLAINT_NONE, "code %u detail %u", wrong.code, wrong.detail);
    CHECK(setup.pixels == 300 && setup.channels == 4, "%u x %u", setup.pixels, setup.channels);
    CHECK(memcmp(setup.order, "GRBW", 4) == 0, "%.4s", setup.order);
    CHECK(setup.channel_uA[2] == 12000 && setup.channel_uA[3] == 18000, "%u", setup.channel_uA[3]);
    CHECK(setup.dark_uA == 1000 && setup.supply == 0, "%u", setup.dark_uA);
    CHECK(setup.holdover_ms == 3000 && setup.after == AFTER_BEACON, "%u", setup.holdover_ms);
    CHECK(setup.supplies == 2 && setup.ceiling_mA[0] == 4000 && setup.ceiling_mA[1] == 2000, "%u", setup.supplies);
    CHECK(setup.dimmers == 2 && setup.dimmer[1].supply == 1, "%u", setup.dimmers);
    CHECK(setup.dimmer[0].full_mA == 800 && setup.dimmer[1].after_duty == 6553, "%u", setup.dimmer[0].full_mA);
    CHECK(setup_strip_bytes(&setup) == 1200, "%u", setup_strip_bytes(&setup));
}

static void echo_is(const struct body *body, size_t length)
{
    uint8_t echo[SETUP_MOST];
    struct setup setup;
    struct complaint wrong = read_body(&setup, body);
    CHECK(wrong.code == COMPLAINT_NONE, "code %u detail %u", wrong.code, wrong.detail);
    CHECK(setup_write(&setup, echo) == length, "%u, not %zu", setup_write(&setup, echo), length);
    CHECK(memcmp(echo, body->bytes, length) == 0, "%zu bytes", length);
}

static struct body largest(void)
{
    struct body body = host_setup_small();
    body.bytes[21] = SUPPLIES;
    body.length = 22;
    for (int i = 0; i < SUPPLIES; i++)
        body_number(&body, (uint16_t)(60000 + i));
    body_byte(&body, DIMMERS);
    for (int i = 0; i < DIMMERS; i++) {
        body_byte(&body, (uint8_t)(i % SUPPLIES));
        body_number(&body, (uint16_t)(100 * i));
        body_number(&body, (uint16_t)(65535 - i));
    }
    return body;
}

static void echo_repeats_the_body(void)
{
    struct body small = host_setup_small();
    struct body two = two_supplies();
    struct body large = largest();
    CHECK(large.length == SETUP_MOST, "%zu", large.length);
    echo_is(&small, small.length);
    echo_is(&two, two.length);
    echo_is(&large, large.length);
}

/* Bodies may grow at the end without a new version (wire.md section 1). */
static void later_bytes_are_skipped(void)
{
    struct body body = largest();
    for (int i = 0; i < 300; i++)
        body_byte(&body, (uint8_t)chance(256));
    echo_is(&body, SETUP_MOST);
}

/* Every length that is too short is reported, with the correct length as far as the counts have arrived. */
static void short_bodies_are_refused(void)
{
    struct body whole = two_supplies();
    for (size_t length = 0; length < whole.length; length++) {
        struct setup setup;
        struct body body = whole;
        body.length = length;
        struct complaint wrong = read_body(&setup, &body);
        uint16_t right = length <= 21 ? 25 : length <= 26 ? 27 : 37;
        CHECK(wrong.code == COMPLAINT_LENGTH, "%zu bytes: code %u", length, wrong.code);
        CHECK(wrong.detail == right, "%zu bytes: %u, not %u", length, wrong.detail, right);
    }
}

/* One field of one body, set to an out-of-range value. */
struct fault {
    const char *what;
    size_t at;
    uint8_t bytes;
    uint16_t value;
    uint16_t detail;
};

static void fault_is_told(const struct fault *fault, struct body body)
{
    struct setup setup;
    if (fault->bytes == 2)
        body.bytes[fault->at] = (uint8_t)(fault->value >> 8);
    body.bytes[fault->at + fault->bytes - 1] = (uint8_t)fault->value;
    struct complaint wrong = read_body(&setup, &body);
    CHECK(wrong.code == COMPLAINT_VALUE, "%s: code %u", fault->what, wrong.code);
    CHECK(wrong.detail == fault->detail, "%s: detail %u", fault->what, wrong.detail);
}

static void values_out_of_range_are_refused(void)
{
    static const struct fault faults[] = {
        { "too many pixels", 0, 2, 301, 0 },
        { "no channels", 2, 1, 0, 2 },
        { "two channels", 2, 1, 2, 2 },
        { "five channels", 2, 1, 5, 2 },
        { "red twice", 3, 1, 'R', 3 },
        { "small letter", 3, 1, 'g', 3 },
        { "no white", 6, 1, 0, 3 },
        { "strip on a supply that is not", 17, 1, 2, 17 },
        { "holdover too short", 18, 2, 99, 18 },
        { "holdover too long", 18, 2, 60001, 18 },
        { "unknown afterwards", 20, 1, 3, 20 },
        { "no supply", 21, 1, 0, 21 },
        { "five supplies", 21, 1, 5, 21 },
        { "seven dimmers", 26, 1, DIMMERS + 1, 26 },
        { "second dimmer on a supply that is not", 32, 1, 2, 32 },
    };
    for (size_t i = 0; i < sizeof faults / sizeof *faults; i++)
        fault_is_told(&faults[i], two_supplies());
}

static void three_channels_have_no_fourth(void)
{
    static const struct fault faults[] = {
        { "a fourth letter", 6, 1, 'W', 3 },
        { "a fourth current", 13, 2, 1, 7 },
        { "white of three", 5, 1, 'W', 3 },
        { "too many pixels", 0, 2, STORE_BYTES / 3 + 1, 0 },
    };
    for (size_t i = 0; i < sizeof faults / sizeof *faults; i++)
        fault_is_told(&faults[i], host_setup_small());
}

static void every_order_is_taken(void)
{
    static const char *const orders[] = { "RGB", "RBG", "GRB", "GBR", "BRG", "BGR" };
    for (size_t i = 0; i < sizeof orders / sizeof *orders; i++) {
        struct body body = host_setup_small();
        memcpy(body.bytes + 3, orders[i], 3);
        echo_is(&body, body.length);
    }
}

static void ends_of_ranges_are_taken(void)
{
    struct body body = host_setup_of(STORE_BYTES / 3, 65535, AFTER_DARK);
    body.bytes[18] = 60000 >> 8;
    body.bytes[19] = 60000 & 255;
    echo_is(&body, body.length);
    body = host_setup_of(0, 0, AFTER_KEEP);
    body.bytes[18] = 0;
    body.bytes[19] = 100;
    echo_is(&body, body.length);
}

/* A set-up equals its own body, and no other valid one. */
static void setup_knows_its_body(void)
{
    struct body whole = largest();
    struct body small = host_setup_small();
    struct setup setup;
    read_body(&setup, &whole);
    CHECK(setup_is(&setup, whole.bytes, (uint16_t)whole.length), "its own");
    CHECK(!setup_is(&setup, small.bytes, (uint16_t)small.length), "a smaller one");
    for (size_t i = 0; i < whole.length; i++) {
        struct setup other;
        struct body body = whole;
        body.bytes[i] ^= 1;
        if (read_body(&other, &body).code == COMPLAINT_NONE)
            CHECK(!setup_is(&setup, body.bytes, (uint16_t)body.length), "byte %zu", i);
    }
    read_body(&setup, &small);
    CHECK(!setup_is(&setup, whole.bytes, (uint16_t)whole.length), "a larger one");
}

void setup_tests(void)
{
    RUN(fields_are_read);
    RUN(echo_repeats_the_body);
    RUN(later_bytes_are_skipped);
    RUN(short_bodies_are_refused);
    RUN(values_out_of_range_are_refused);
    RUN(three_channels_have_no_fourth);
    RUN(every_order_is_taken);
    RUN(ends_of_ranges_are_taken);
    RUN(setup_knows_its_body);
}
