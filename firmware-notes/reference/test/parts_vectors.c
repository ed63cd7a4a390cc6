/**
 * Frames in parts that were lost, doubled and swapped, compared with vectors/parts.txt, which the in-memory controller is also compared
 * with; and the same at random, many more times.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "chance.h"
#include "check.h"
#include "host.h"
#include "tests.h"

#define LINE_MOST 4096

#define PIXELS 8
#define BYTES (3 * PIXELS)
#define FRAMES 40
#define CREDITS_MOST 8
#define MESSAGES_MOST (FRAMES * 4)

static size_t read_hex(uint8_t *bytes, const char *text)
{
    size_t count = 0;
    unsigned byte;
    for (; sscanf(text, "%2x", &byte) == 1; text += 2)
        bytes[count++] = (uint8_t)byte;
    return count;
}

static void check_answer(char *const word[4], int line)
{
    struct packet got;
    uint8_t body[HOST_WIRE_MOST];
    size_t length = read_hex(body, word[2]);
    CHECK(host_receive(&got), "no answer in line %d", line);
    CHECK(got.type == strtol(word[1], NULL, 16), "%02x in line %d", got.type, line);
    CHECK(got.sequence == strtol(word[3], NULL, 16), "%02x in line %d", got.sequence, line);
    CHECK(got.length == length && memcmp(got.body, body, length) == 0, "body of line %d", line);
}

static void check_strip(const char *strip, int line)
{
    uint8_t bytes[STORE_BYTES];
    size_t count = read_hex(bytes, strip);
    CHECK(bench.drives == (strip[0] != '-'), "%d drives in line %d", bench.drives, line);
    CHECK(memcmp(bench.strip, bytes, count) == 0, "strip of line %d", line);
}

static void say_line(int line)
{
    const char *blank = " \n";
    uint8_t wire[HOST_WIRE_MOST];
    size_t count = read_hex(wire, strtok(NULL, blank));
    char *type = strtok(NULL, blank);
    char *sequence = strtok(NULL, blank);
    char *body = strtok(NULL, blank);
    bench_forget();
    bench_line(wire, count, 9);
    check_answer((char *const[]){ NULL, type, body, sequence }, line);
    check_strip(strtok(NULL, blank), line);
}

static void vectors_of_parts_are_met(void)
{
    static char text[LINE_MOST];
    FILE *file = fopen(PARTS_VECTORS, "r");
    CHECK(file != NULL, "%s", PARTS_VECTORS);
    if (file == NULL)
        return;
    int line = 0;
    int said = 0;
    while (fgets(text, sizeof text, file) != NULL) {
        char *kind = strtok(text, " \n");
        line++;
        if (strcmp(kind, "case") == 0)
            bench_start();
        if (strcmp(kind, "say") == 0) {
            said++;
            say_line(line);
        }
    }
    fclose(file);
    CHECK(said > 500, "%d messages", said);
}

/* A message in transit. */
struct message {
    uint8_t sequence;
    struct body body;
};

static struct message way[2 * MESSAGES_MOST];
static size_t on_the_way;

/* No two frames have a byte in common. */
static uint8_t byte_of(int frame)
{
    return (uint8_t)(1 + frame);
}

static void send_in_parts(int frame, uint8_t *sequence)
{
    uint8_t bytes[BYTES];
    memset(bytes, byte_of(frame), sizeof bytes);
    for (uint16_t at = 0; at < BYTES;) {
        uint16_t count = (uint16_t)(6 + 6 * chance(3));
        if (count > BYTES - at)
            count = (uint16_t)(BYTES - at);
        way[on_the_way].sequence = (*sequence)++;
        way[on_the_way++].body = host_frame(at, at + count == BYTES, NULL, 0, bytes, count);
        at = (uint16_t)(at + count);
    }
}

/* Loses, doubles and swaps what is in transit; swaps only what may be unanswered at one time. */
static void trouble(uint32_t credits)
{
    static struct message came[2 * MESSAGES_MOST];
    size_t count = 0;
    for (size_t i = 0; i < on_the_way; i++)
        for (uint32_t copies = chance(5) == 0 ? 0 : 1 + (chance(10) == 0); copies > 0; copies--)
            came[count++] = way[i];
    for (size_t i = 0; i < count; i++) {
        size_t other = i + chance(credits);
        if (chance(6) != 0 || other >= count)
            continue;
        struct message kept = came[i];
        came[i] = came[other];
        came[other] = kept;
    }
    memcpy(way, came, count * sizeof *came);
    on_the_way = count;
}

static void nothing_else_is_shown(void)
{
    if (bench.drives == 0)
        return;
    CHECK(bench.strip_length == BYTES, "%u", bench.strip_length);
    for (int i = 1; i < BYTES; i++)
        CHECK(bench.strip[i] == bench.strip[0], "a frame of %u with %u", bench.strip[0], bench.strip[i]);
}

static int frames_shown(uint32_t credits)
{
    struct body setup = host_setup_of(PIXELS, 1500, 2);
    uint8_t sequence = (uint8_t)chance(256);
    int shown = 0;
    bench_start();
    host_ask(0x02, (uint8_t)(sequence - 1), setup.bytes, setup.length, 0x82);
    on_the_way = 0;
    for (int frame = 0; frame < FRAMES; frame++)
        send_in_parts(frame, &sequence);
    trouble(credits);
    for (size_t i = 0; i < on_the_way; i++) {
        bench_forget();
        host_send(0x03, way[i].sequence, way[i].body.bytes, way[i].body.length);
        nothing_else_is_shown();
        shown += bench.drives;
    }
    return shown;
}

/* Whatever is lost, doubled and swapped: what is shown is a frame that was sent, and frames get through. */
static void only_frames_that_were_sent_are_shown(void)
{
    int shown = 0;
    for (int round = 0; round < 400; round++)
        shown += frames_shown(1 + (uint32_t)round % CREDITS_MOST);
    CHECK(shown > 1000, "%d frames", shown);
}

void parts_vectors_tests(void)
{
    RUN(vectors_of_parts_are_met);
    RUN(only_frames_that_were_sent_are_shown);
}
