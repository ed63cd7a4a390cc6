/* Tests of the parts that need no chip. Each check names its source, or says that it has none. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "../command.h"
#include "../dimmer.h"
#include "../fuse.h"
#include "../image.h"
#include "../json.h"
#include "../pace.h"
#include "../strip.h"
#include "../trouble.h"
#include "../turn.h"

static int passed;
static int failed;

static void check(bool holds, const char *what)
{
    if (holds) {
        passed++;
        return;
    }
    failed++;
    printf("failed: %s\n", what);
}

/* ---- strip ---------------------------------------------------------------------------------------------------- */

enum { NS = 1000, US = 1000000 };

/* In the middle of the limits that the datasheets of WS2812B and SK6812 (data transfer time) have in common. */
static const uint64_t middle_ps[STRIP_PULSES] = {350 * NS, 875 * NS, 700 * NS, 525 * NS};

struct bench {
    struct strip strip;
    uint64_t at_ps;
    int frames;
    struct strip_frame frame;
};

static void keep_frame(void *context, const struct strip_frame *frame)
{
    struct bench *bench = context;
    bench->frames++;
    bench->frame = *frame;
}

static struct bench *new_bench(void)
{
    static struct bench bench;
    memset(&bench, 0, sizeof bench);
    strip_start(&bench.strip, 600 * NS, 280 * (uint64_t)US, keep_frame, &bench);
    return &bench;
}

static void pulse(struct bench *bench, uint64_t high_ps, uint64_t low_ps)
{
    strip_edge(&bench->strip, true, bench->at_ps);
    bench->at_ps += high_ps;
    strip_edge(&bench->strip, false, bench->at_ps);
    bench->at_ps += low_ps;
}

static void send_bit(struct bench *bench, bool bit)
{
    pulse(bench, middle_ps[bit ? STRIP_T1H : STRIP_T0H], middle_ps[bit ? STRIP_T1L : STRIP_T0L]);
}

static void send_byte(struct bench *bench, uint8_t byte)
{
    for (int bit = 7; bit >= 0; bit--)
        send_bit(bench, byte >> bit & 1);
}

static void wait_for(struct bench *bench, uint64_t ps)
{
    bench->at_ps += ps;
    strip_until(&bench->strip, bench->at_ps);
}

/* Out-of-tolerance pulses of a frame of two bits, the first with one width changed. */
static uint64_t out_of_tolerance(enum strip_pulse which, uint64_t width_ps)
{
    struct bench *bench = new_bench();
    bool bit = which == STRIP_T1H || which == STRIP_T1L;
    uint64_t high_ps = middle_ps[bit ? STRIP_T1H : STRIP_T0H];
    uint64_t low_ps = middle_ps[bit ? STRIP_T1L : STRIP_T0L];
    if (which == STRIP_T0H || which == STRIP_T1H)
        high_ps = width_ps;
    else
        low_ps = width_ps;
    pulse(bench, high_ps, low_ps);
    send_bit(bench, false);
    wait_for(bench, 300 * (uint64_t)US);
    return bench->frames == 1 ? bench->frame.widths.out_of_tolerance : 99;
}

/*
 * Data transfer time, T0H, T0L, T1H, T1L, each +-150 ns: WS2812B datasheet 0.4, 0.85, 0.8, 0.45 us; SK6812 datasheet 0.3, 0.9, 0.6,
 * 0.6 us. So the higher of the two lower limits and the lower of the two higher ones.
 */
static void strip_holds_the_datasheet_limits(void)
{
    static const struct {
        enum strip_pulse pulse;
        uint64_t least_ns;
        uint64_t most_ns;
        const char *name;
    } limits[] = {
        {STRIP_T0H, 400 - 150, 300 + 150, "T0H"}, {STRIP_T0L, 900 - 150, 850 + 150, "T0L"},
        {STRIP_T1H, 800 - 150, 600 + 150, "T1H"}, {STRIP_T1L, 600 - 150, 450 + 150, "T1L"},
    };
    for (unsigned i = 0; i < sizeof limits / sizeof limits[0]; i++) {
        check(out_of_tolerance(limits[i].pulse, limits[i].least_ns * NS) == 0, limits[i].name);
        check(out_of_tolerance(limits[i].pulse, limits[i].least_ns * NS - 1) == 1, limits[i].name);
        check(out_of_tolerance(limits[i].pulse, limits[i].most_ns * NS) == 0, limits[i].name);
        check(out_of_tolerance(limits[i].pulse, limits[i].most_ns * NS + 1) == 1, limits[i].name);
    }
}

/* WS2812B datasheet, composition of 24 bit data: high bit sent first. */
static void strip_reads_bytes(void)
{
    struct bench *bench = new_bench();
    const uint8_t sent[] = {0x80, 0x01, 0xa5, 0x00, 0xff, 0x3c};
    for (unsigned i = 0; i < sizeof sent; i++)
        send_byte(bench, sent[i]);
    wait_for(bench, 280 * (uint64_t)US);
    check(bench->frames == 1, "one frame");
    check(bench->frame.count == 6 && memcmp(bench->frame.bytes, sent, 6) == 0, "its bytes, high bit first");
    check(bench->frame.loose_bits == 0 && bench->frame.pauses == 0, "nothing left over");
    check(bench->frame.widths.out_of_tolerance == 0, "the last low is not measured");
    check(bench->frame.widths.pulse[STRIP_T1H].shortest_ps == 700 * NS, "width of a 1");
}

static void strip_decides_by_the_threshold(void)
{
    struct bench *bench = new_bench();
    for (int i = 0; i < 4; i++) {
        pulse(bench, 600 * NS, 700 * NS);
        pulse(bench, 600 * NS + 1, 500 * NS);
    }
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frame.bytes[0] == 0x55, "600 ns is a 0, more is a 1");
}

/* WS2812B datasheet, later issues: RES over 280 us. */
static void strip_latches_after_the_reset_time(void)
{
    struct bench *bench = new_bench();
    send_byte(bench, 0x12);
    bench->at_ps -= middle_ps[STRIP_T0L];
    uint64_t fell_ps = bench->at_ps;
    wait_for(bench, 280 * (uint64_t)US - 1);
    check(bench->frames == 0, "not before the reset time");
    wait_for(bench, 1);
    check(bench->frames == 1 && bench->frame.latched_ps == fell_ps + 280 * (uint64_t)US, "at the reset time");
    check(!bench->frame.gap_known, "no gap is known before the first frame");

    bench->at_ps = fell_ps + 400 * (uint64_t)US;
    send_byte(bench, 0x34);
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frames == 2 && bench->frame.bytes[0] == 0x34, "a second frame");
    check(bench->frame.gap_known && bench->frame.gap_ps == 400 * (uint64_t)US, "and the gap before it");
    check(bench->strip.gaps.shortest_ps == 400 * (uint64_t)US, "which is the shortest");
}

/* What a strip does with more bits than it has pixels: it passes them on. No other source. */
static void strip_shifts_on_after_a_short_gap(void)
{
    struct bench *bench = new_bench();
    send_byte(bench, 0x12);
    bench->at_ps += 279 * (uint64_t)US - middle_ps[STRIP_T0L];
    send_byte(bench, 0x34);
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frames == 1 && bench->frame.count == 2, "one frame of both");
    check(bench->frame.pauses == 1 && bench->frame.widths.out_of_tolerance == 1, "and the pause is told");
    check(bench->frame.widths.pulse[STRIP_T0L].longest_ps == 279 * (uint64_t)US, "with its length");
}

static void strip_tells_what_is_left_over(void)
{
    struct bench *bench = new_bench();
    send_byte(bench, 0xff);
    for (int i = 0; i < 3; i++)
        send_bit(bench, true);
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frame.count == 1 && bench->frame.loose_bits == 3, "three loose bits");
    send_byte(bench, 0x0f);
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frame.count == 1 && bench->frame.bytes[0] == 0x0f, "which do not reach into the next frame");
}

static void strip_survives_a_frame_without_end(void)
{
    struct bench *bench = new_bench();
    for (int i = 0; i < STRIP_MOST_BYTES + 5; i++)
        send_byte(bench, 0x77);
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frame.count == STRIP_MOST_BYTES + 5, "all bytes are counted");
    check(strip_kept(&bench->frame) == STRIP_MOST_BYTES, "and not all are kept");
}

static void strip_passes_over_edges_that_are_none(void)
{
    struct bench *bench = new_bench();
    strip_edge(&bench->strip, false, 5);
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frames == 0, "a low line shows nothing");
    send_byte(bench, 0x42);
    strip_edge(&bench->strip, false, bench->at_ps);
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frames == 1 && bench->frame.bytes[0] == 0x42, "and a second fall is no bit");
}

static void strip_takes_no_pulse_from_a_line_let_go(void)
{
    struct bench *bench = new_bench();
    send_byte(bench, 0x42);
    strip_edge(&bench->strip, true, bench->at_ps);
    strip_release(&bench->strip, bench->at_ps + 100 * NS);
    bench->at_ps += 100 * NS;
    wait_for(bench, 300 * (uint64_t)US);
    check(bench->frames == 1 && bench->frame.count == 1 && bench->frame.loose_bits == 0, "no bit");
    check(bench->frame.widths.out_of_tolerance == 0, "and no width");
}

/* ---- trouble -------------------------------------------------------------------------------------------------- */

static unsigned bits_of(uint8_t byte)
{
    unsigned count = 0;
    for (; byte != 0; byte &= (uint8_t)(byte - 1))
        count++;
    return count;
}

static void trouble_hurts_one_in_each_run(void)
{
    struct trouble trouble;
    trouble_start(&trouble, 7);
    trouble_set(&trouble, TROUBLE_DROP, 5, 10);
    bool one_each = true;
    for (int run = 0; run < 5; run++) {
        int dropped = 0;
        for (int i = 0; i < 10; i++)
            dropped += trouble_pass(&trouble, 0x55).count == 0;
        one_each = one_each && dropped == 1;
    }
    check(one_each, "one byte of every ten is dropped");
    int passed_on = 0;
    for (int i = 0; i < 100; i++)
        passed_on += trouble_pass(&trouble, 0x55).count == 1;
    check(passed_on == 100 && trouble.hurt[TROUBLE_DROP] == 5, "and none after the fifth");
}

static void trouble_flips_and_doubles(void)
{
    struct trouble trouble;
    trouble_start(&trouble, 7);
    trouble_set(&trouble, TROUBLE_FLIP, 1000, 1);
    unsigned places = 0;
    bool one_bit = true;
    for (int i = 0; i < 1000; i++) {
        uint8_t changed = trouble_pass(&trouble, 0x3c).bytes[0] ^ 0x3c;
        one_bit = one_bit && bits_of(changed) == 1;
        places |= changed;
    }
    check(one_bit, "one bit flips");
    check(places == 0xff, "and it may be any");
    trouble_set(&trouble, TROUBLE_DOUBLE, 1, 1);
    struct trouble_outcome twice = trouble_pass(&trouble, 9);
    check(twice.count == 2 && twice.bytes[0] == 9 && twice.bytes[1] == 9 && twice.hurt, "a byte comes twice");
    struct trouble_outcome once = trouble_pass(&trouble, 9);
    check(once.count == 1 && once.bytes[0] == 9 && !once.hurt, "and the next one once");
}

static void trouble_is_the_same_for_the_same_seed(void)
{
    struct trouble a, b, c;
    bool same = true, other = false;
    trouble_start(&a, 1);
    trouble_start(&b, 1);
    trouble_start(&c, 2);
    trouble_set(&a, TROUBLE_FLIP, 1000, 3);
    trouble_set(&b, TROUBLE_FLIP, 1000, 3);
    trouble_set(&c, TROUBLE_FLIP, 1000, 3);
    for (int i = 0; i < 300; i++) {
        uint8_t from_a = trouble_pass(&a, 0).bytes[0];
        same = same && from_a == trouble_pass(&b, 0).bytes[0];
        other = other || from_a != trouble_pass(&c, 0).bytes[0];
    }
    check(same, "the same seed, the same damage");
    check(other, "another seed, another damage");
}

/* ---- dimmer --------------------------------------------------------------------------------------------------- */

/* Data memory with registers set; addresses from the ATmega328P datasheet, register summary. */
struct setting {
    int address;
    uint8_t value;
};

static struct dimmer calculate(int which, const struct setting *settings, unsigned count)
{
    uint8_t data[256] = {0};
    for (unsigned i = 0; i < count; i++)
        data[settings[i].address] = settings[i].value;
    return dimmer_reckon(data, which, 16e6);
}

#define RECKON(which, ...) \
    calculate(which, (const struct setting[]){__VA_ARGS__}, \
           sizeof((const struct setting[]){__VA_ARGS__}) / sizeof(struct setting))

static bool is_near(double a, double b)
{
    return a - b < 1e-6 && b - a < 1e-6;
}

static bool shows(struct dimmer dimmer, double duty, double hz)
{
    return dimmer.known && is_near(dimmer.duty, duty) && is_near(dimmer.hz, hz);
}

/* ATmega328P datasheet: f = clk / (N 256) in fast PWM, clk / (N 510) in phase correct PWM, clk / (2 N TOP) with TOP. */
static void dimmer_follows_the_datasheet(void)
{
    check(shows(RECKON(0, {0x2a, 0x40}, {0x44, 0x83}, {0x45, 3}, {0x47, 63}), 0.25, 976.5625), "OC0A fast, 64/256");
    check(shows(RECKON(0, {0x2a, 0x40}, {0x44, 0x81}, {0x45, 3}, {0x47, 51}), 0.2, 16e6 / 64 / 510), "OC0A correct");
    check(shows(RECKON(1, {0x2a, 0x20}, {0x44, 0x33}, {0x45, 1}, {0x48, 63}), 0.75, 62500), "OC0B fast, inverted");
    check(shows(RECKON(2, {0x24, 2}, {0x80, 0x82}, {0x81, 0x11}, {0x86, 0xff}, {0x87, 0xff}, {0x89, 0x40}, {0x88, 0}),
                16384.0 / 65535, 16e6 / 2 / 65535), "OC1A correct with ICR");
    check(shows(RECKON(3, {0x24, 4}, {0x80, 0x22}, {0x81, 0x19}, {0x86, 0xff}, {0x87, 0x03}, {0x8b, 1}, {0x8a, 0xff}),
                0.5, 15625), "OC1B fast with ICR");
    check(shows(RECKON(4, {0x24, 8}, {0xb0, 0x81}, {0xb1, 4}, {0xb3, 255}), 1, 0), "OC2A correct, full on");
    check(shows(RECKON(4, {0x24, 8}, {0xb0, 0x81}, {0xb1, 4}, {0xb3, 0}), 0, 0), "OC2A correct, off");
    check(shows(RECKON(5, {0x2a, 8}, {0xb0, 0x21}, {0xb1, 4}, {0xb4, 51}), 0.2, 16e6 / 64 / 510), "OC2B, timer 2's 64");
    check(shows(RECKON(0, {0x2a, 0x40}, {0x44, 0x42}, {0x45, 1}, {0x47, 99}), 0.5, 80000), "OC0A toggles in CTC");
    check(shows(RECKON(1, {0x2a, 0x20}, {0x44, 0x23}, {0x45, 9}, {0x47, 99}, {0x48, 24}), 0.25, 160000), "TOP is OCR0A");
}

static void dimmer_leaves_the_pin_to_its_port(void)
{
    check(shows(RECKON(0, {0x2a, 0x40}, {0x44, 3}, {0x45, 3}, {0x47, 63}), 0, 0), "disconnected, low");
    check(shows(RECKON(0, {0x2a, 0x40}, {0x2b, 0x40}, {0x44, 3}, {0x45, 3}, {0x47, 63}), 1, 0), "disconnected, high");
    struct dimmer floats = RECKON(0, {0x44, 0x83}, {0x45, 3}, {0x47, 63});
    check(!floats.driven && shows(floats, 0, 0), "an input drives nothing");
    check(!RECKON(0, {0x2a, 0x40}, {0x44, 0x83}, {0x47, 63}).known, "a stopped timer's level is not known");
    check(!RECKON(0, {0x2a, 0x40}, {0x44, 0x83}, {0x45, 6}, {0x47, 63}).known, "nor one clocked from outside");
}

/* ATmega328P datasheet, "Fast PWM Mode": non-inverted from BOTTOM, inverted from the compare match to TOP. */
static void dimmer_tells_where_its_pulse_is(void)
{
    struct dimmer early = RECKON(0, {0x2a, 0x40}, {0x44, 0x83}, {0x45, 3}, {0x47, 63});
    struct dimmer late = RECKON(1, {0x2a, 0x20}, {0x44, 0x33}, {0x45, 1}, {0x48, 191});
    check(early.from_known && early.from == 0, "from the start");
    check(late.from_known && is_near(late.from, 0.75) && is_near(late.duty, 0.25), "up to the end");
    check(!RECKON(0, {0x2a, 0x40}, {0x44, 0x81}, {0x45, 3}, {0x47, 51}).from_known, "not in phase correct PWM");
}

static void dimmer_registers_are_watched(void)
{
    struct dimmer_registers seen = {{0}};
    uint8_t data[256] = {0};
    check(!dimmer_touched(&seen, data), "nothing new");
    data[0x8b] = 1;
    check(dimmer_touched(&seen, data) && !dimmer_touched(&seen, data), "a compare register, once");
    data[0x2b] = 0x10;
    check(!dimmer_touched(&seen, data), "the strip's pin is none of theirs");
    data[0x2b] = 0x48;
    check(dimmer_touched(&seen, data), "but a dimmer's is");
}

/* ---- fuse ------------------------------------------------------------------------------------------------------ */

static void fuse_blows_when_it_is_over_for_too_long(void)
{
    const struct fuse_rating rating = {
        .most_mA = 100, .bears_ps = 10, .dark_mA = 2, .channels = 3, .channel_mA = {10, 20, 30}, .dimmer_mA = {60},
    };
    struct dimmer dimmers[DIMMER_OUTPUTS] = {{.duty = 0.5}};
    struct fuse fuse;
    double strip_mA = fuse_strip_mA(&rating, (const uint8_t[]){255, 0, 51, 0, 255, 255}, 6);
    check(is_near(strip_mA, 2 + 10 + 6 + 20 + 30), "what the strip draws");
    fuse_fit(&fuse, &rating);
    fuse_load(&fuse, strip_mA, dimmers, 100);
    check(!fuse_until(&fuse, 1000) && is_near(fuse.highest_mA, 98), "below its rating for ever");
    dimmers[0].duty = 0.6;
    fuse_load(&fuse, strip_mA, dimmers, 1000);
    check(!fuse_until(&fuse, 1010), "over it for as long as it bears");
    dimmers[0].duty = 0.5;
    fuse_load(&fuse, strip_mA, dimmers, 1010);
    check(!fuse_until(&fuse, 2000) && fuse.longest_ps == 10, "and below again");
    dimmers[0].duty = 0.6;
    fuse_load(&fuse, strip_mA, dimmers, 2000);
    fuse_load(&fuse, strip_mA + 1, dimmers, 2006);
    check(fuse_until(&fuse, 2011) && !fuse_until(&fuse, 2012), "it blows once");
    check(is_near(fuse.highest_mA, 105), "the highest is kept");
}

/* ---- commands ------------------------------------------------------------------------------------------------- */

static bool is_refused(const char *line)
{
    struct command command;
    const char *complaint;
    return !command_read(line, &command, &complaint) && strlen(complaint) > 0;
}

static void commands_are_understood(void)
{
    struct command command;
    const char *complaint;
    check(command_read("deaf 250", &command, &complaint) && command.kind == COMMAND_DEAF && command.ms == 250, "deaf");
    check(command_read("stall 0", &command, &complaint) && command.kind == COMMAND_STALL && command.ms == 0, "stall");
    check(command_read("drop 3", &command, &complaint) && command.kind == COMMAND_TROUBLE
          && command.trouble == TROUBLE_DROP && !command.up && command.count == 3 && command.every == 1, "drop");
    check(command_read(" flip up 3 every 100 ", &command, &complaint) && command.trouble == TROUBLE_FLIP && command.up
          && command.count == 3 && command.every == 100, "flip up every");
    check(command_read("double down 1", &command, &complaint) && command.trouble == TROUBLE_DOUBLE && !command.up,
          "double down");
    check(command_read("fuse 1150 280 30000 12000,12000,12000 1080,0", &command, &complaint) && command.kind == COMMAND_FUSE
              && command.fuse.most_mA == 1150 && command.fuse.bears_ps == 280 * (uint64_t)US && command.fuse.dark_mA == 30
              && command.fuse.channels == 3 && command.fuse.channel_mA[2] == 12 && command.fuse.dimmer_mA[0] == 1080,
          "fuse");
    check(command_read("fuse 0", &command, &complaint) && command.fuse.most_mA == 0, "fuse 0");
    check(command_read("brown_out", &command, &complaint) && command.kind == COMMAND_BROWN_OUT, "brown_out");
    check(command_read("reset", &command, &complaint) && command.kind == COMMAND_RESET, "reset");
    check(command_read("hang", &command, &complaint) && command.kind == COMMAND_HANG, "hang");
    check(command_read("unplug", &command, &complaint) && command.kind == COMMAND_UNPLUG, "unplug");
    check(command_read("plug", &command, &complaint) && command.kind == COMMAND_PLUG, "plug");
    check(command_read("stats", &command, &complaint) && command.kind == COMMAND_STATS, "stats");
    check(command_read("quit\r", &command, &complaint) && command.kind == COMMAND_QUIT, "quit");
}

static void other_lines_are_refused(void)
{
    static const char *const wrong[] = {
        "", "  ", "sing", "fuse", "fuse 1", "fuse 100 280 30000 12000,12000 5", "fuse 100 280 30000 1,2,3,4,5 5",
        "fuse 100 280 30000 1,x,3 5", "fuse 0 280 30000 1,2,3 5", "deaf", "deaf x", "deaf -1", "deaf 3600001", "deaf 1 2", "drop", "drop up", "drop 1 every",
        "drop 1 every 0", "drop 1 all 2", "drop 1 every 2 3", "flip sideways 1", "reset now", "hang 1", "drop 99999999999",
        "a b c d e f g h",
    };
    for (unsigned i = 0; i < sizeof wrong / sizeof wrong[0]; i++)
        check(is_refused(wrong[i]), wrong[i]);
}

/* ---- the rest ------------------------------------------------------------------------------------------------- */

static void pace_keeps_to_real_time(void)
{
    struct pace pace;
    pace_start(&pace, false, 16000000, 1000, 500);
    check(pace_target(&pace, 1000, 500) == 500, "no time, no cycles");
    check(pace_target(&pace, 1001000, 500) == 16500, "a millisecond is 16000 cycles");
    check(pace_target(&pace, 1000 + 3600000000000ull, 57600000000ull) == 57600000500ull, "nothing drifts in an hour");
    check(pace.lost_ns == 0, "nothing is given up in time");
}

static void pace_gives_up_what_is_too_far_behind(void)
{
    struct pace pace;
    pace_start(&pace, false, 16000000, 0, 0);
    check(pace_target(&pace, 100000000, 0) == 320000, "100 ms behind, it makes up for 20");
    check(pace.lost_ns == 80000000, "and gives 80 up");
    check(pace_target(&pace, 100000000, 320000) == 320000, "for good");
    pace_forgive(&pace, 500000000, 320000);
    check(pace_target(&pace, 501000000, 320000) == 336000, "forgiven time is not made up for");
    pace_start(&pace, true, 16000000, 0, 0);
    check(pace_target(&pace, 0, 77) > 77, "a free board needs no time");
}

/* RFC 8259, section 7. */
static void json_escapes_what_it_must(void)
{
    struct json json = {0};
    char line[200] = "";
    const uint8_t bytes[] = {0x00, 0xff, 0x1a};
    FILE *file = tmpfile();
    json_begin(&json);
    json_text(&json, "a", "\"\\\n\x01");
    json_hex(&json, "b", bytes, 3);
    json_open_array(&json, "c");
    json_integer(&json, NULL, -1);
    json_number(&json, NULL, 0.0625, 4);
    json_item(&json, "x");
    json_close_array(&json);
    json_open_object(&json, "d");
    json_boolean(&json, "e", true);
    json_null(&json, "f");
    json_close_object(&json);
    check(json_end(&json, file), "a line is written");
    rewind(file);
    check(fgets(line, sizeof line, file) != NULL && strcmp(line,
          "{\"a\":\"\\\"\\\\\\u000a\\u0001\",\"b\":\"00ff1a\",\"c\":[-1,0.0625,\"x\"],\"d\":{\"e\":true,\"f\":null}}\n") == 0,
          "as RFC 8259 has it");
    fclose(file);
    json_free(&json);
}

static bool refuses_image(const void *bytes, size_t count)
{
    static struct image image;
    const char *complaint = "";
    char path[] = P_tmpdir "/board-unit-XXXXXX";
    int file = mkstemp(path);
    bool written = write(file, bytes, count) == (ssize_t)count;
    bool refused = !image_read(path, &image, &complaint) && strlen(complaint) > 0;
    close(file);
    unlink(path);
    return written && refused;
}

static void images_that_are_none_are_refused(void)
{
    static struct image image;
    const char *complaint = "";
    uint8_t header[52] = {0x7f, 'E', 'L', 'F', 1, 1, 1};
    check(refuses_image("", 0), "an empty file");
    check(refuses_image("hello", 5), "a text");
    header[18] = 3;
    header[42] = 32;
    check(refuses_image(header, sizeof header), "another machine's");
    header[18] = 83;
    check(refuses_image(header, sizeof header), "one without segments");
    header[28] = 52;
    header[44] = 5;
    check(refuses_image(header, sizeof header), "one whose segments lie beyond its end");
    check(!image_read("no/such/file", &image, &complaint) && strlen(complaint) > 0, "none at all");
}

static void eeprom_is_read_from_digits(void)
{
    static struct image image;
    static char too_long[2 * IMAGE_EEPROM_BYTES + 3];
    struct image_eeprom eeprom = {.count = 0};
    memset(image.eeprom, 0xff, sizeof image.eeprom);
    check(image_read_eeprom("6C61ff00", &eeprom) && eeprom.count == 4, "four bytes");
    image_preload(&image, &eeprom);
    check(memcmp(image.eeprom, "\x6c\x61\xff\0\xff", 5) == 0 && image.eeprom_end == 4, "they are where they belong");
    memset(too_long, '0', sizeof too_long - 1);
    check(!image_read_eeprom(too_long, &eeprom), "more than there is room for");
    check(image_read_eeprom(too_long + 2, &eeprom), "as much as there is room for");
    check(!image_read_eeprom("", &eeprom), "none");
    check(!image_read_eeprom("123", &eeprom), "half a byte");
    check(!image_read_eeprom("0x12", &eeprom) && !image_read_eeprom(" 1", &eeprom), "what is no digit");
}

static void turns_are_measured_from_the_last_byte_to_the_last(void)
{
    struct turn turn = {0};
    turn_spoke(&turn, 50);
    turn_heard(&turn, 100);
    check(turn.count == 0, "what is said unasked is no turn");
    turn_heard(&turn, 200);
    turn_spoke(&turn, 250);
    turn_spoke(&turn, 300);
    check(turn.count == 0, "the chip may say more");
    turn_heard(&turn, 1000);
    turn_spoke(&turn, 1040);
    turn_heard(&turn, 2000);
    check(turn.count == 2 && turn.sum == 140 && turn.longest == 100, "two turns");
    turn_break(&turn);
    turn_spoke(&turn, 2100);
    turn_heard(&turn, 2200);
    check(turn.count == 2, "what follows a reset answers nothing");
}

int main(void)
{
    strip_holds_the_datasheet_limits();
    strip_reads_bytes();
    strip_decides_by_the_threshold();
    strip_latches_after_the_reset_time();
    strip_shifts_on_after_a_short_gap();
    strip_tells_what_is_left_over();
    strip_survives_a_frame_without_end();
    strip_passes_over_edges_that_are_none();
    strip_takes_no_pulse_from_a_line_let_go();
    trouble_hurts_one_in_each_run();
    trouble_flips_and_doubles();
    trouble_is_the_same_for_the_same_seed();
    dimmer_follows_the_datasheet();
    dimmer_leaves_the_pin_to_its_port();
    dimmer_tells_where_its_pulse_is();
    dimmer_registers_are_watched();
    fuse_blows_when_it_is_over_for_too_long();
    commands_are_understood();
    other_lines_are_refused();
    pace_keeps_to_real_time();
    pace_gives_up_what_is_too_far_behind();
    json_escapes_what_it_must();
    images_that_are_none_are_refused();
    eeprom_is_read_from_digits();
    turns_are_measured_from_the_last_byte_to_the_last();
    printf("unit: %d passed, %d failed\n", passed, failed);
    return failed > 0;
}
