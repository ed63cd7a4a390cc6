/** Reads vectors/packets.txt, which the Java code is also tested against. */
#ifndef VECTORS_H
#define VECTORS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "host.h"

/** One line of the file. */
struct vector {
    bool good;
    char name[64];
    uint8_t wire[HOST_WIRE_MOST]; /* with its zero */
    size_t count;
    struct packet packet; /* of a valid one */
};

/** Calls `use` for each vector. Returns how many there were, or -1 if the file cannot be read. */
int vectors_each(void (*use)(const struct vector *vector));

/** Finds a vector; there must be one with that name. */
const struct vector *vectors_find(const char *name);

#endif
