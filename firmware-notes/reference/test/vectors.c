#include "vectors.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static size_t read_hex(uint8_t *bytes, const char *text)
{
    size_t count = 0;
    unsigned byte;
    for (; sscanf(text, "%2x", &byte) == 1; text += 2)
        bytes[count++] = (uint8_t)byte;
    return count;
}

static bool read_line(struct vector *vector, char *line)
{
    const char *blank = " \n";
    const char *kind = strtok(line, blank);
    if (kind == NULL || kind[0] == '#')
        return false;
    memset(vector, 0, sizeof *vector);
    vector->good = strcmp(kind, "good") == 0;
    snprintf(vector->name, sizeof vector->name, "%s", strtok(NULL, blank));
    vector->count = read_hex(vector->wire, strtok(NULL, blank));
    if (vector->good) {
        vector->packet.type = (uint8_t)strtol(strtok(NULL, blank), NULL, 16);
        vector->packet.sequence = (uint8_t)strtol(strtok(NULL, blank), NULL, 16);
        vector->packet.length = read_hex(vector->packet.body, strtok(NULL, blank));
    }
    return true;
}

int vectors_each(void (*use)(const struct vector *vector))
{
    static char line[4 * HOST_WIRE_MOST];
    static struct vector vector;
    FILE *file = fopen(VECTORS, "r");
    if (file == NULL)
        return -1;
    int count = 0;
    while (fgets(line, sizeof line, file) != NULL) {
        if (!read_line(&vector, line))
            continue;
        use(&vector);
        count++;
    }
    fclose(file);
    return count;
}

static const char *wanted;
static struct vector found;

static void keep_if_wanted(const struct vector *vector)
{
    if (strcmp(vector->name, wanted) == 0)
        found = *vector;
}

const struct vector *vectors_find(const char *name)
{
    wanted = name;
    memset(&found, 0, sizeof found);
    vectors_each(keep_if_wanted);
    return &found;
}
