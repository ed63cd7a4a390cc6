#ifndef LAMPWRIGHT_FUSE_H
#define LAMPWRIGHT_FUSE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "dimmer.h"

/*
 * A fuse in a supply that feeds the strip and dimmers: adds up what they draw, moment by moment, and blows when the sum stays over its
 * rating for longer than it can carry. A dimmer counts with its mean. Pure; times as in strip.h.
 */

enum { FUSE_CHANNELS = 4 };

/* What is connected to the supply. */
struct fuse_rating {
    double most_mA;
    uint64_t bears_ps;                  /* how long it carries more */
    double dark_mA;                     /* of the whole dark strip */
    unsigned channels;                  /* of a pixel, 1 to 4 */
    double channel_mA[FUSE_CHANNELS];   /* of each at full duty, in the strip's order */
    double dimmer_mA[DIMMER_OUTPUTS];   /* of each at full duty */
};

struct fuse {
    bool fitted;
    struct fuse_rating rating;
    double highest_mA;
    bool over;
    uint64_t over_since_ps;
    uint64_t longest_ps;                /* over the rating at one time */
    bool blown;
};

/* Fits a new fuse. */
void fuse_fit(struct fuse *fuse, const struct fuse_rating *rating);

/* Current of a strip that shows these bytes. */
double fuse_strip_mA(const struct fuse_rating *rating, const uint8_t *bytes, size_t count);

/* Since at_ps the strip draws strip_mA, and the dimmers their current. */
void fuse_load(struct fuse *fuse, double strip_mA, const struct dimmer dimmers[DIMMER_OUTPUTS], uint64_t at_ps);

/* Advances time to now_ps without another load. Returns true when the fuse blows, once. */
bool fuse_until(struct fuse *fuse, uint64_t now_ps);

#endif
