#include "strip.h"

#include <string.h>

struct tolerance {
    uint64_t least_ps;
    uint64_t most_ps;
};

enum { SHEETS = 2 };

static const struct tolerance tolerances[SHEETS][STRIP_PULSES] = {
    { /* WS2812B, data transfer time: 0.4, 0.85, 0.8, 0.45 us, +-150 ns */
        [STRIP_T0H] = {250000, 550000},
        [STRIP_T0L] = {700000, 1000000},
        [STRIP_T1H] = {650000, 950000},
        [STRIP_T1L] = {300000, 600000},
    },
    { /* SK6812, data transfer time: 0.3, 0.9, 0.6, 0.6 us, +-150 ns */
        [STRIP_T0H] = {150000, 450000},
        [STRIP_T0L] = {750000, 1050000},
        [STRIP_T1H] = {450000, 750000},
        [STRIP_T1L] = {450000, 750000},
    },
};

static const struct strip_range nothing_seen = {UINT64_MAX, 0};

static void widen(struct strip_range *range, uint64_t width_ps)
{
    if (width_ps < range->shortest_ps)
        range->shortest_ps = width_ps;
    if (width_ps > range->longest_ps)
        range->longest_ps = width_ps;
}

static void clear_widths(struct strip_widths *widths)
{
    for (int i = 0; i < STRIP_PULSES; i++)
        widths->pulse[i] = nothing_seen;
    widths->out_of_tolerance = 0;
}

static bool is_in_tolerance(enum strip_pulse pulse, uint64_t width_ps)
{
    bool good = true;
    for (int sheet = 0; sheet < SHEETS; sheet++) {
        const struct tolerance *tolerance = &tolerances[sheet][pulse];
        good = good && width_ps >= tolerance->least_ps && width_ps <= tolerance->most_ps;
    }
    return good;
}

static void note(struct strip_widths *widths, enum strip_pulse pulse, uint64_t width_ps)
{
    widen(&widths->pulse[pulse], width_ps);
    if (!is_in_tolerance(pulse, width_ps))
        widths->out_of_tolerance++;
}

static void measure(struct strip *strip, enum strip_pulse pulse, uint64_t width_ps)
{
    note(&strip->frame.widths, pulse, width_ps);
    note(&strip->widths, pulse, width_ps);
}

static void clear_frame(struct strip_frame *frame)
{
    frame->count = 0;
    frame->loose_bits = 0;
    frame->pauses = 0;
    clear_widths(&frame->widths);
}

static bool has_bits(const struct strip *strip)
{
    return strip->frame.count > 0 || strip->frame.loose_bits > 0;
}

static void shift_in(struct strip *strip, bool bit)
{
    struct strip_frame *frame = &strip->frame;
    strip->shift = (uint8_t)(strip->shift << 1 | bit);
    frame->loose_bits++;
    if (frame->loose_bits < 8)
        return;
    frame->loose_bits = 0;
    if (frame->count < STRIP_MOST_BYTES)
        frame->bytes[frame->count] = strip->shift;
    frame->count++;
}

static void latch(struct strip *strip)
{
    strip->frame.latched_ps = strip->fell_ps + strip->reset_ps;
    strip->frames++;
    strip->latched(strip->context, &strip->frame);
    clear_frame(&strip->frame);
}

static void start_frame(struct strip *strip, uint64_t at_ps)
{
    strip->frame.started_ps = at_ps;
    strip->frame.gap_known = strip->has_fallen;
    strip->frame.gap_ps = strip->has_fallen ? at_ps - strip->fell_ps : 0;
    if (strip->frames > 0)
        widen(&strip->gaps, strip->frame.gap_ps);
}

static void end_low(struct strip *strip, uint64_t at_ps)
{
    uint64_t low_ps = at_ps - strip->fell_ps;
    measure(strip, strip->last_bit ? STRIP_T1L : STRIP_T0L, low_ps);
    if (low_ps >= STRIP_PAUSE_PS)
        strip->frame.pauses++;
}

static void rise(struct strip *strip, uint64_t at_ps)
{
    strip_until(strip, at_ps);
    if (has_bits(strip))
        end_low(strip, at_ps);
    else
        start_frame(strip, at_ps);
    strip->rose_ps = at_ps;
}

static void fall(struct strip *strip, uint64_t at_ps)
{
    uint64_t high_ps = at_ps - strip->rose_ps;
    strip->last_bit = high_ps > strip->threshold_ps;
    measure(strip, strip->last_bit ? STRIP_T1H : STRIP_T0H, high_ps);
    shift_in(strip, strip->last_bit);
    strip->fell_ps = at_ps;
    strip->has_fallen = true;
}

void strip_start(struct strip *strip, uint64_t threshold_ps, uint64_t reset_ps, strip_latched *latched, void *context)
{
    memset(strip, 0, sizeof *strip);
    strip->threshold_ps = threshold_ps;
    strip->reset_ps = reset_ps;
    strip->latched = latched;
    strip->context = context;
    strip->gaps = nothing_seen;
    clear_widths(&strip->widths);
    clear_frame(&strip->frame);
}

void strip_edge(struct strip *strip, bool high, uint64_t at_ps)
{
    if (high == strip->high)
        return;
    if (high)
        rise(strip, at_ps);
    else
        fall(strip, at_ps);
    strip->high = high;
}

void strip_release(struct strip *strip, uint64_t at_ps)
{
    if (!strip->high)
        return;
    strip->high = false;
    strip->fell_ps = at_ps;
    strip->has_fallen = true;
}

void strip_until(struct strip *strip, uint64_t now_ps)
{
    if (!strip->high && has_bits(strip) && now_ps - strip->fell_ps >= strip->reset_ps)
        latch(strip);
}

size_t strip_kept(const struct strip_frame *frame)
{
    return frame->count < STRIP_MOST_BYTES ? frame->count : STRIP_MOST_BYTES;
}
