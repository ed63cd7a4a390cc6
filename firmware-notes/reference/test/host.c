#include "host.h"

#include <string.h>

#include "chance.h"
#include "check.h"

uint16_t host_crc(const uint8_t *bytes, size_t count)
{
    uint16_t crc = 0xFFFF;
    for (size_t i = 0; i < count; i++) {
        crc = (uint16_t)(crc ^ bytes[i] << 8);
        for (int bit = 0; bit < 8; bit++)
            crc = (uint16_t)(crc & 0x8000 ? crc << 1 ^ 0x1021 : crc << 1);
    }
    return crc;
}

size_t host_encode(uint8_t *wire, const uint8_t *bytes, size_t count)
{
    size_t out = 0;
    size_t at = 0;
    bool more = true;
    while (more) {
        size_t run = 0;
        while (at + run < count && bytes[at + run] != 0 && run < 254)
            run++;
        wire[out++] = (uint8_t)(run + 1);
        memcpy(wire + out, bytes + at, run);
        out += run;
        at += run;
        more = at < count;
        if (more && run < 254) {
            at++; /* the block's implied zero; what follows it, even nothing, is a block */
        }
    }
    return out;
}

long host_decode(uint8_t *bytes, const uint8_t *wire, size_t count)
{
    long out = 0;
    size_t at = 0;
    while (at < count) {
        uint8_t code = wire[at++];
        if (code == 0 || at + code - 1u > count)
            return -1;
        for (int i = 1; i < code; i++)
            bytes[out++] = wire[at++];
        if (code < 255 && at < count)
            bytes[out++] = 0;
    }
    return out;
}

size_t host_write(uint8_t *wire, uint8_t type, uint8_t sequence, const uint8_t *body, size_t length)
{
    uint8_t plain[HOST_WIRE_MOST] = { type, sequence };
    if (length > 0)
        memcpy(plain + 2, body, length);
    uint16_t crc = host_crc(plain, length + 2);
    plain[length + 2] = (uint8_t)crc;
    plain[length + 3] = (uint8_t)(crc >> 8);
    size_t count = host_encode(wire, plain, length + 4);
    wire[count] = 0;
    return count + 1;
}

void host_send(uint8_t type, uint8_t sequence, const uint8_t *body, size_t length)
{
    uint8_t wire[HOST_WIRE_MOST];
    bench_line(wire, host_write(wire, type, sequence, body, length), 40);
}

static void read_packet(struct packet *packet, const uint8_t *wire, size_t count)
{
    uint8_t plain[BENCH_SENT_MOST];
    long length = host_decode(plain, wire, count);
    CHECK(length >= 4, "%ld", length);
    if (length < 4)
        return;
    uint16_t crc = (uint16_t)(plain[length - 2] | plain[length - 1] << 8);
    CHECK(crc == host_crc(plain, (size_t)length - 2), "%04x", crc);
    packet->type = plain[0];
    packet->sequence = plain[1];
    packet->length = (size_t)length - 4;
    memcpy(packet->body, plain + 2, packet->length);
}

bool host_receive(struct packet *packet)
{
    memset(packet, 0, sizeof *packet);
    uint8_t *end = memchr(bench.sent, 0, bench.sent_count);
    CHECK(end != NULL || bench.sent_count == 0, "%zu bytes without an end", bench.sent_count);
    if (end == NULL)
        return false;
    size_t count = (size_t)(end - bench.sent);
    read_packet(packet, bench.sent, count);
    bench.sent_count -= count + 1;
    memmove(bench.sent, end + 1, bench.sent_count);
    return true;
}

struct packet host_ask(uint8_t type, uint8_t sequence, const uint8_t *body, size_t length, uint8_t answer)
{
    struct packet got;
    struct packet surplus;
    bench.sent_count = 0;
    host_send(type, sequence, body, length);
    CHECK(host_receive(&got), "no answer to type %02x", type);
    CHECK(got.type == answer, "%02x to %02x, code %u detail %u", got.type, type, got.body[0], host_number(got.body + 1));
    CHECK(got.sequence == sequence, "%u, not %u", got.sequence, sequence);
    CHECK(!host_receive(&surplus), "a second answer, of type %02x", surplus.type);
    bench_settle();
    return got;
}

uint8_t host_complaint(uint8_t type, uint8_t sequence, const uint8_t *body, size_t length, uint16_t *detail)
{
    struct packet got = host_ask(type, sequence, body, length, 0x84);
    *detail = host_number(got.body + 1);
    return got.body[0];
}

uint16_t host_number(const uint8_t *bytes)
{
    return (uint16_t)(bytes[0] << 8 | bytes[1]);
}

void body_byte(struct body *body, uint8_t byte)
{
    body->bytes[body->length++] = byte;
}

void body_number(struct body *body, uint16_t number)
{
    body_byte(body, (uint8_t)(number >> 8));
    body_byte(body, (uint8_t)number);
}

struct body host_setup_of(uint16_t pixels, uint16_t ceiling_mA, uint8_t after)
{
    struct body body = { { 0 }, 0 };
    body_number(&body, pixels);
    body_byte(&body, 3);
    for (const char *letter = "GRB"; *letter; letter++)
        body_byte(&body, (uint8_t)*letter);
    body_byte(&body, 0);
    for (int i = 0; i < 3; i++)
        body_number(&body, 12000);
    body_number(&body, 0);
    body_number(&body, 1000);
    body_byte(&body, 0);
    body_number(&body, 3000);
    body_byte(&body, after);
    body_byte(&body, 1);
    body_number(&body, ceiling_mA);
    body_byte(&body, 0);
    return body;
}

struct body host_setup_small(void)
{
    return host_setup_of(2, 1500, 2);
}

struct body host_frame(uint16_t offset, bool last, const uint16_t *duties, uint8_t dimmers, const uint8_t *bytes,
                       size_t count)
{
    struct body body = { { 0 }, 0 };
    body_number(&body, offset);
    body_byte(&body, last);
    for (uint8_t i = 0; offset == 0 && i < dimmers; i++)
        body_number(&body, duties[i]);
    if (count > 0)
        memcpy(body.bytes + body.length, bytes, count);
    body.length += count;
    return body;
}
