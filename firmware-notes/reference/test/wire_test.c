/** Checksum, COBS and packets, against the catalogue, the paper, the vectors, and the host's own. */
#include <string.h>

#include "answer.h"
#include "chance.h"
#include "check.h"
#include "crc.h"
#include "host.h"
#include "limits.h"
#include "packet.h"
#include "tests.h"
#include "vectors.h"

static uint16_t crc_of(const uint8_t *bytes, size_t count)
{
    struct crc crc = CRC_START;
    for (size_t i = 0; i < count; i++)
        crc = crc_next(crc, bytes[i]);
    return (uint16_t)(crc.high << 8 | crc.low);
}

/* Catalogue of parametrised CRC algorithms: CRC-16/IBM-3740, check 0x29B1. */
static void checksum_meets_the_catalogue(void)
{
    CHECK(crc_of((const uint8_t *)"123456789", 9) == 0x29B1, "%04x", crc_of((const uint8_t *)"123456789", 9));
}

static void checksum_is_the_bitwise_one(void)
{
    uint8_t bytes[300];
    for (int round = 0; round < 2000; round++) {
        size_t count = chance(sizeof bytes);
        for (size_t i = 0; i < count; i++)
            bytes[i] = (uint8_t)chance(256);
        CHECK(crc_of(bytes, count) == host_crc(bytes, count), "%zu bytes", count);
    }
}

/* An answer as the port sends it equals the host's packet of the same content, whatever zeros are in it. */
static void answers_are_whole_packets(void)
{
    for (int round = 0; round < 4000; round++) {
        uint8_t body[ANSWER_MOST];
        uint8_t wire[HOST_WIRE_MOST];
        struct answer answer;
        uint8_t type = (uint8_t)chance(256);
        uint8_t count = (uint8_t)chance(ANSWER_MOST + 1);
        for (uint8_t i = 0; i < count; i++)
            body[i] = (uint8_t)chance(round % 4 == 0 ? 2 : 256);
        bench_forget();
        answer_begin(&answer, type, (uint8_t)round);
        answer_bytes(&answer, body, count);
        answer_end(&answer);
        size_t length = host_write(wire, type, (uint8_t)round, body, count);
        CHECK(bench.sent_count == length, "%zu, not %zu", bench.sent_count, length);
        CHECK(memcmp(bench.sent, wire, length) == 0, "%u bytes", count);
    }
}

/* The result of packet_take for a whole stretch of wire bytes. */
struct reading {
    int events[PACKET_BROKEN + 1];
    uint8_t body[HOST_WIRE_MOST];
    size_t length;
    struct packet_reader reader;
};

static void read_pieces(struct reading *reading, const uint8_t *wire, size_t count, uint8_t piece)
{
    uint8_t copy[255];
    while (count > 0) {
        size_t now = 1 + chance(piece);
        if (now > count)
            now = count;
        memcpy(copy, wire, now);
        struct packet_step step = packet_take(&reading->reader, copy, (uint8_t)now);
        CHECK(step.used >= 1 && step.used <= now && step.body <= step.used, "%u of %zu", step.used, now);
        memcpy(reading->body + reading->length, copy, step.body);
        reading->length += step.body;
        reading->events[step.event]++;
        wire += step.used;
        count -= step.used;
    }
}

static void read_anew(struct reading *reading, const uint8_t *wire, size_t count, uint8_t piece)
{
    memset(reading, 0, sizeof *reading);
    packet_start(&reading->reader);
    read_pieces(reading, wire, count, piece);
}

static void vector_is_read(const struct vector *vector, uint8_t piece)
{
    struct reading reading;
    read_anew(&reading, vector->wire, vector->count, piece);
    CHECK(reading.events[PACKET_GOOD] == vector->good, "%s in pieces of %u", vector->name, piece);
    CHECK(reading.events[PACKET_BROKEN] == !vector->good, "%s in pieces of %u", vector->name, piece);
    CHECK(reading.reader.came == vector->count - 1, "%s: %u came", vector->name, reading.reader.came);
    CHECK(!packet_under_way(&reading.reader), "%s", vector->name);
    if (!vector->good)
        return;
    CHECK(reading.reader.type == vector->packet.type, "%s", vector->name);
    CHECK(reading.reader.sequence == vector->packet.sequence, "%s", vector->name);
    CHECK(reading.reader.length == vector->packet.length, "%s", vector->name);
    CHECK(reading.length == vector->packet.length, "%s: %zu", vector->name, reading.length);
    CHECK(memcmp(reading.body, vector->packet.body, reading.length) == 0, "%s", vector->name);
}

static void vector_in_all_pieces(const struct vector *vector)
{
    static const uint8_t pieces[] = { 1, 2, 3, 17, 255 };
    for (size_t i = 0; i < sizeof pieces; i++)
        vector_is_read(vector, pieces[i]);
}

static void vectors_are_read(void)
{
    int count = vectors_each(vector_in_all_pieces);
    CHECK(count > 50, "%d vectors in %s", count, VECTORS);
}

static void vector_is_written_by_the_host(const struct vector *vector)
{
    uint8_t wire[HOST_WIRE_MOST];
    const struct packet *packet = &vector->packet;
    if (!vector->good)
        return;
    size_t count = host_write(wire, packet->type, packet->sequence, packet->body, packet->length);
    CHECK(count == vector->count && memcmp(wire, vector->wire, count) == 0, "%s", vector->name);
}

/* The tests' own host is checked against the vectors too. */
static void host_writes_the_vectors(void)
{
    vectors_each(vector_is_written_by_the_host);
}

static void long_packet_is_told_from_a_broken_one(void)
{
    static uint8_t body[PACKET_MOST];
    static uint8_t wire[HOST_WIRE_MOST];
    struct reading reading;
    size_t most = PACKET_MOST - 4;
    read_anew(&reading, wire, host_write(wire, 0x7E, 1, body, most), 100);
    CHECK(reading.events[PACKET_GOOD] == 1, "%zu bytes of body", most);
    size_t count = host_write(wire, 0x7E, 1, body, most + 1);
    read_anew(&reading, wire, count, 100);
    CHECK(reading.events[PACKET_TOO_LONG] == 1, "%zu bytes of body", most + 1);
    wire[count - 2] ^= 1;
    read_anew(&reading, wire, count, 100);
    CHECK(reading.events[PACKET_BROKEN] == 1, "%zu bytes of body, flipped", most + 1);
}

/* Numbers that could overflow stay at their maximum: no length of garbage looks like a short packet. */
static void endless_packet_is_broken(void)
{
    struct reading reading;
    uint8_t garbage[200];
    read_anew(&reading, (const uint8_t[]){ 1 }, 1, 1);
    for (int i = 0; i < 1000; i++) {
        memset(garbage, 1 + i % 255, sizeof garbage);
        packet_take(&reading.reader, garbage, sizeof garbage);
    }
    CHECK(reading.reader.came == UINT16_MAX, "%u", reading.reader.came);
    CHECK(packet_under_way(&reading.reader), "after 200 001 bytes");
    read_pieces(&reading, (const uint8_t[]){ 0 }, 1, 1);
    CHECK(reading.events[PACKET_BROKEN] == 1, "%d", reading.events[PACKET_BROKEN]);
}

static void empty_packets_are_skipped(void)
{
    static const uint8_t zeros[9];
    struct reading reading;
    read_anew(&reading, zeros, sizeof zeros, 4);
    CHECK(reading.events[PACKET_BROKEN] == 0, "%d", reading.events[PACKET_BROKEN]);
}

static void spoilt_packet_is_broken_and_the_next_is_not(void)
{
    const struct vector *hello = vectors_find("hello");
    struct reading reading;
    read_anew(&reading, hello->wire, 3, 3);
    packet_spoil(&reading.reader);
    read_pieces(&reading, hello->wire + 3, hello->count - 3, 3);
    CHECK(reading.events[PACKET_BROKEN] == 1, "%d", reading.events[PACKET_BROKEN]);
    read_pieces(&reading, hello->wire, hello->count, 3);
    CHECK(reading.events[PACKET_GOOD] == 1, "%d", reading.events[PACKET_GOOD]);
}

/* What comes after a loss between two packets is the end of a packet, even if it looks like a whole one. */
static void loss_before_the_first_byte_spoils_the_packet(void)
{
    const struct vector *hello = vectors_find("hello");
    struct reading reading;
    read_anew(&reading, hello->wire, hello->count, 3);
    packet_spoil(&reading.reader);
    CHECK(!packet_under_way(&reading.reader), "nothing has come of it");
    read_pieces(&reading, hello->wire, hello->count, 3);
    CHECK(reading.events[PACKET_GOOD] == 1, "%d", reading.events[PACKET_GOOD]);
    CHECK(reading.events[PACKET_BROKEN] == 1, "%d", reading.events[PACKET_BROKEN]);
    read_pieces(&reading, hello->wire, hello->count, 3);
    CHECK(reading.events[PACKET_GOOD] == 2, "%d", reading.events[PACKET_GOOD]);
}

/* All of a packet but its zero was lost, and nothing follows. */
static void loss_of_all_but_the_zero_is_told(void)
{
    static const uint8_t zeros[2];
    const struct vector *hello = vectors_find("hello");
    struct reading reading;
    read_anew(&reading, hello->wire, hello->count, 3);
    packet_spoil(&reading.reader);
    read_pieces(&reading, zeros, sizeof zeros, 1);
    CHECK(reading.events[PACKET_BROKEN] == 1, "%d", reading.events[PACKET_BROKEN]);
    CHECK(reading.reader.came == 0, "%u", reading.reader.came);
    read_pieces(&reading, hello->wire, hello->count, 3);
    CHECK(reading.events[PACKET_GOOD] == 2, "%d", reading.events[PACKET_GOOD]);
}

/* Cheshire and Baker: whatever came before, a reader is in step after the next zero. */
static void reader_is_in_step_after_a_zero(void)
{
    const struct vector *hello = vectors_find("hello");
    for (int round = 0; round < 5000; round++) {
        struct reading reading;
        uint8_t noise[400];
        size_t count = 1 + chance(sizeof noise - 1);
        for (size_t i = 0; i < count; i++)
            noise[i] = (uint8_t)chance(256);
        noise[count - 1] = 0;
        read_anew(&reading, noise, count, 50);
        int before = reading.events[PACKET_GOOD];
        read_pieces(&reading, hello->wire, hello->count, 50);
        CHECK(reading.events[PACKET_GOOD] == before + 1, "round %d", round);
    }
}

void wire_tests(void)
{
    RUN(checksum_meets_the_catalogue);
    RUN(checksum_is_the_bitwise_one);
    RUN(answers_are_whole_packets);
    RUN(host_writes_the_vectors);
    RUN(vectors_are_read);
    RUN(long_packet_is_told_from_a_broken_one);
    RUN(endless_packet_is_broken);
    RUN(empty_packets_are_skipped);
    RUN(spoilt_packet_is_broken_and_the_next_is_not);
    RUN(loss_before_the_first_byte_spoils_the_packet);
    RUN(loss_of_all_but_the_zero_is_told);
    RUN(reader_is_in_step_after_a_zero);
}
