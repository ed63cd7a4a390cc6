/** The clamp compared with vectors/clamp.txt, which the host's calculation is also compared with. */
#include <stdio.h>
#include <string.h>

#include "check.h"
#include "clamp.h"
#include "frame.h"
#include "setup.h"
#include "tests.h"

#define LINE_MOST 4096

static struct setup setup;
static struct frame frame;

static size_t read_hex(uint8_t *bytes, const char *text)
{
    size_t count = 0;
    unsigned byte;
    for (; sscanf(text, "%2x", &byte) == 1; text += 2)
        bytes[count++] = (uint8_t)byte;
    return count;
}

static void read_duties(uint16_t *duties, const char *text)
{
    uint8_t bytes[2 * DIMMERS];
    size_t count = read_hex(bytes, text);
    for (size_t i = 0; i < count / 2; i++)
        duties[i] = (uint16_t)(bytes[2 * i] << 8 | bytes[2 * i + 1]);
}

static void read_frame(const char *strip, const char *duties)
{
    uint8_t bytes[STORE_BYTES];
    size_t count = read_hex(bytes, strip);
    frame_clear(&frame, setup_strip_bytes(&setup), setup.channels);
    frame_open(&frame);
    CHECK(frame_room(&frame) == count, "%zu bytes of %u", count, frame_room(&frame));
    frame_put(&frame, bytes, (uint8_t)count);
    read_duties(frame.duty, duties);
}

static void check_shown(const char *strip, const char *duties, int line)
{
    uint8_t bytes[STORE_BYTES];
    uint16_t duty[DIMMERS] = {0};
    size_t count = read_hex(bytes, strip);
    read_duties(duty, duties);
    CHECK(memcmp(bytes, frame.bytes, count) == 0, "strip of line %d", line);
    CHECK(memcmp(duty, frame.duty, sizeof duty) == 0, "duties of line %d", line);
}

static void check_line(char *text, int line)
{
    const char *blank = " \n";
    uint8_t body[SETUP_MOST];
    char *word[6];
    strtok(text, blank);
    for (int i = 0; i < 6; i++)
        word[i] = strtok(NULL, blank);
    size_t length = read_hex(body, word[0]);
    CHECK(setup_read(&setup, body, (uint16_t)length).code == COMPLAINT_NONE, "set-up of line %d", line);
    read_frame(word[1], word[2]);
    CHECK(clamp_frame(&setup, &frame) == (strcmp(word[5], "over") == 0), "line %d", line);
    check_shown(word[3], word[4], line);
}

static void clamp_agrees_with_the_vectors(void)
{
    static char text[LINE_MOST];
    FILE *file = fopen(CLAMP_VECTORS, "r");
    CHECK(file != NULL, "no %s", CLAMP_VECTORS);
    int checked = 0;
    for (int line = 1; file != NULL && fgets(text, sizeof text, file) != NULL; line++) {
        if (text[0] == '#')
            continue;
        check_line(text, line);
        checked++;
    }
    CHECK(checked >= 300, "%d", checked);
    if (file != NULL)
        fclose(file);
}

void clamp_vector_tests(void)
{
    RUN(clamp_agrees_with_the_vectors);
}
