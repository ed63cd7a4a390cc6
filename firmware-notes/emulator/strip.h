#ifndef LAMPWRIGHT_STRIP_H
#define LAMPWRIGHT_STRIP_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/*
 * Reads the waveform of the strip's data line as a strip of one-wire pixels would: a long high is a 1, a short high a 0,
 * most significant bit first, and a low of the reset time latches what was shifted in. Pure: it sees edges with their
 * times and nothing else. Times are in picoseconds since any origin and never go back.
 *
 * Pulse widths are held against two datasheets, and have to be within both, limits included: the WS2812B's (Worldsemi, data
 * transfer time: T0H 0.4 us, T0L 0.85 us, T1H 0.8 us, T1L 0.45 us, each +-150 ns), the usual pixel of three channels, and the
 * SK6812's (Opsco, data transfer time: 0.3, 0.9, 0.6 and 0.6 us, each +-150 ns), the usual one of four. The last low before a
 * reset is not measured. (The sheets were not at hand: WS2812B as the pages miccah.io/kb/ws2812b and circuitguy.ca repeat its table;
 * SK6812 as Pololu's and Adafruit's copies are tabulated, its tolerance as RIOT-OS's ws281x_constants.h takes it.)
 */

enum { STRIP_MOST_BYTES = 8192 };

/* A low of this length is no longer a bit but a pause of a byte or longer (8 bits of 1.25 us). */
#define STRIP_PAUSE_PS 10000000ull

enum strip_pulse { STRIP_T0H, STRIP_T0L, STRIP_T1H, STRIP_T1L, STRIP_PULSES };

/* Shortest and longest of a kind seen; none was seen if shortest is over longest. */
struct strip_range {
    uint64_t shortest_ps;
    uint64_t longest_ps;
};

struct strip_widths {
    struct strip_range pulse[STRIP_PULSES];
    uint64_t out_of_tolerance;
};

struct strip_frame {
    uint64_t started_ps;                /* rise of the first bit */
    uint64_t latched_ps;                /* end of the reset time */
    bool gap_known;
    uint64_t gap_ps;                    /* low before the first bit, if known */
    uint8_t bytes[STRIP_MOST_BYTES];
    size_t count;                       /* whole bytes; those over STRIP_MOST_BYTES are counted but not kept */
    unsigned loose_bits;                /* bits after the last whole byte, 0 to 7 */
    unsigned pauses;                    /* lows of STRIP_PAUSE_PS or more, too short to latch: the strip went on shifting */
    struct strip_widths widths;
};

typedef void strip_latched(void *context, const struct strip_frame *frame);

struct strip {
    uint64_t threshold_ps;
    uint64_t reset_ps;
    strip_latched *latched;
    void *context;

    bool high;
    bool has_fallen;
    bool last_bit;
    uint64_t rose_ps;
    uint64_t fell_ps;
    uint8_t shift;
    struct strip_frame frame;

    uint64_t frames;                    /* latched since the start */
    struct strip_range gaps;            /* of resets between two frames */
    struct strip_widths widths;         /* since the start */
};

/* A high longer than threshold_ps is a 1; a low of reset_ps or longer latches. The line is low. */
void strip_start(struct strip *strip, uint64_t threshold_ps, uint64_t reset_ps, strip_latched *latched, void *context);

/* The line changed. An edge to the level that the line already has is ignored. */
void strip_edge(struct strip *strip, bool high, uint64_t at_ps);

/* The line was released and the strip holds it low: what was high until now is not a pulse. */
void strip_release(struct strip *strip, uint64_t at_ps);

/* Advances time to now_ps without a further edge; latches if the low lasted long enough. */
void strip_until(struct strip *strip, uint64_t now_ps);

/* Number of bytes kept of a frame: count, but at most STRIP_MOST_BYTES. */
size_t strip_kept(const struct strip_frame *frame);

#endif
