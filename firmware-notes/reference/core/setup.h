/** The set-up: what is connected to the controller and what it may draw (wire.md section 3, SETUP). */
#ifndef SETUP_H
#define SETUP_H

#include <stdbool.h>
#include <stdint.h>

#include "complaint.h"
#include "limits.h"

/** Maximum meaningful length of a set-up's body. */
#define SETUP_MOST (22 + 2 * SUPPLIES + 1 + 5 * DIMMERS + (OUTPUTS > 1 ? 1 + 3 * OUTPUTS : 0))

/** What to show without a host: SETUP and REST use the same numbers. */
enum afterwards {
    AFTER_DARK = 0,
    AFTER_KEEP = 1,
    AFTER_BEACON = 2,
};

/** One dimmer in use. */
struct dimmer {
    uint8_t supply;      /* number of its supply */
    uint16_t full_mA;    /* current at full duty */
    uint16_t after_duty; /* duty without a host, 0 to 65535 */
};

/** One run of the strip: what is connected to one data line. */
struct run {
    uint8_t output;  /* number of its data line, 0 to OUTPUTS - 1 */
    uint16_t pixels;
};

/** A set-up that was found valid. */
struct setup {
    uint16_t pixels;               /* pixels x channels is at most STORE_BYTES */
    uint8_t channels;              /* of a pixel, 3 or 4 */
    char order[CHANNELS];          /* letter of each channel in the strip's order; 0 in the fourth place with three */
    uint16_t channel_uA[CHANNELS]; /* of each channel at full duty, in the strip's order */
    uint16_t dark_uA;              /* of a dark pixel */
    uint8_t supply;                /* that feeds the strip */
    uint16_t holdover_ms;          /* 100 to 60000 */
    uint8_t after;                 /* enum afterwards */
    uint8_t supplies;              /* 1 to SUPPLIES */
    uint16_t ceiling_mA[SUPPLIES]; /* of each supply */
    uint8_t dimmers;               /* in use, 0 to DIMMERS */
    struct dimmer dimmer[DIMMERS];
    uint8_t runs;                  /* that the strip is split into, all pixels together; 0: all of it is on the first data line */
    struct run run[OUTPUTS];
};

/*@ // As many supplies, dimmers and runs as there is room for.
    predicate counts_good{L}(struct setup *setup) = 1 <= setup->supplies <= SUPPLIES && setup->dimmers <= DIMMERS
        && (OUTPUTS > 1 ? setup->runs <= OUTPUTS : setup->runs == 0);
    predicate setup_good{L}(struct setup *setup) = counts_good(setup) && (setup->channels == 3 || setup->channels == 4)
        && setup->pixels * setup->channels <= STORE_BYTES && setup->supply < setup->supplies
        && \forall integer i; 0 <= i < setup->runs ==> setup->run[i].output < OUTPUTS;
*/

/**
 * Reads a body of `length` bytes, of which the first SETUP_MOST, if there are that many, are at `body`; the rest is skipped. Returns no
 * complaint, or COMPLAINT_LENGTH, or COMPLAINT_VALUE; after either of these, `setup` is meaningless.
 */
/*@ requires \valid(setup) && \valid_read(body + (0 .. SETUP_MOST - 1)) && \separated(setup, body + (0 .. SETUP_MOST - 1));
    assigns *setup;
    ensures \result.code == COMPLAINT_NONE ==> setup_good(setup);
*/
struct complaint setup_read(struct setup *setup, const uint8_t *body, uint16_t length);

/** Writes the body of a valid set-up. Returns its length, at most SETUP_MOST. */
/*@ requires \valid_read(setup) && counts_good(setup) && \valid(body + (0 .. SETUP_MOST - 1));
    requires \separated(setup, body + (0 .. SETUP_MOST - 1));
    assigns body[0 .. SETUP_MOST - 1];
    ensures \result <= SETUP_MOST;
*/
uint8_t setup_write(const struct setup *setup, uint8_t body[SETUP_MOST]);

/** Whether a valid set-up equals the one in a body of `length` bytes, which has been read and found valid. */
/*@ requires \valid_read(setup) && counts_good(setup) && \valid_read(body + (0 .. SETUP_MOST - 1));
    assigns \nothing;
*/
bool setup_is(const struct setup *setup, const uint8_t *body, uint16_t length);

/** Bytes of strip in a whole frame, at most STORE_BYTES. */
/*@ requires \valid_read(setup) && setup_good(setup);
    assigns \nothing;
    ensures \result == setup->pixels * setup->channels;
*/
uint16_t setup_strip_bytes(const struct setup *setup);

#endif
