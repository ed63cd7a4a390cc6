#include "setup.h"

#include "number.h"

/* Offsets in the body (wire.md section 3). */
enum {
    AT_PIXELS = 0,
    AT_CHANNELS = 2,
    AT_ORDER = 3,
    AT_CHANNEL_UA = 7,
    AT_DARK_UA = 15,
    AT_SUPPLY = 17,
    AT_HOLDOVER = 18,
    AT_AFTER = 20,
    AT_SUPPLIES = 21,
    AT_CEILINGS = 22,
};

/* Bytes of one dimmer. */
#define DIMMER_BYTES 5

/* Bytes of one run. */
#define RUN_BYTES 3

#define HOLDOVER_LEAST 100
#define HOLDOVER_MOST 60000

/*@ // The counts in a body are good; they are within its length.
    predicate counts_told{L}(uint8_t *body, integer length) = length > AT_SUPPLIES && 1 <= body[AT_SUPPLIES] <= SUPPLIES
        && body[AT_CEILINGS + 2 * body[AT_SUPPLIES]] <= DIMMERS;
*/

/*@ requires supplies <= SUPPLIES;
    assigns \nothing;
    ensures \result == AT_CEILINGS + 2 * supplies;
*/
static uint8_t at_dimmers(uint8_t supplies)
{
    return (uint8_t)(AT_CEILINGS + 2 * supplies);
}

/*@ requires supplies <= SUPPLIES && dimmer <= DIMMERS;
    assigns \nothing;
    ensures \result == AT_CEILINGS + 2 * supplies + 1 + DIMMER_BYTES * dimmer;
*/
static uint8_t at_dimmer(uint8_t supplies, uint8_t dimmer)
{
    return (uint8_t)(at_dimmers(supplies) + 1 + DIMMER_BYTES * dimmer);
}

/* Runs may follow everything that firmware 1.0.0 knew. A board with one data line skips them, as that did. */

/*@ requires \valid_read(setup) && setup->supplies <= SUPPLIES && setup->dimmers <= DIMMERS && run <= OUTPUTS;
    assigns \nothing;
    ensures \result == AT_CEILINGS + 2 * setup->supplies + 1 + DIMMER_BYTES * setup->dimmers + 1 + RUN_BYTES * run;
*/
static uint8_t at_run(const struct setup *setup, uint8_t run)
{
    return (uint8_t)(at_dimmer(setup->supplies, setup->dimmers) + 1 + RUN_BYTES * run);
}

/*@ requires OUTPUTS > 1 ==> \valid_read(body + at);
    assigns \nothing;
    ensures OUTPUTS > 1 && length > at ? \result == body[at] : \result == 0;
*/
static uint8_t runs_told(const uint8_t *body, uint16_t length, uint8_t at)
{
    return OUTPUTS > 1 && length > at ? body[at] : 0;
}

/*@ assigns \nothing;
    ensures \result.code == COMPLAINT_VALUE;
*/
static struct complaint wrong_value(uint8_t offset)
{
    return complain(COMPLAINT_VALUE, offset);
}

/* Whether all fields are present. The counts that determine how many there must be are checked on the way. */
/*@ requires \valid_read(body + (0 .. SETUP_MOST - 1));
    assigns \nothing;
    ensures \result.code == COMPLAINT_NONE ==> counts_told(body, length);
*/
static struct complaint check_length(const uint8_t *body, uint16_t length)
{
    uint8_t supplies = length > AT_SUPPLIES ? body[AT_SUPPLIES] : 1;
    if (supplies < 1 || supplies > SUPPLIES)
        return wrong_value(AT_SUPPLIES);
    uint8_t at = at_dimmers(supplies);
    uint8_t dimmers = length > at ? body[at] : 0;
    if (dimmers > DIMMERS)
        return wrong_value(at);
    uint8_t least = at_dimmer(supplies, dimmers);
    uint8_t runs = runs_told(body, length, least);
    if (runs > OUTPUTS)
        return wrong_value(least);
    if (runs > 0)
        least = (uint8_t)(least + 1 + RUN_BYTES * runs);
    return length < least ? complain(COMPLAINT_LENGTH, least) : content();
}

/*@ requires \valid_read(order + (0 .. CHANNELS - 1)) && channels <= CHANNELS;
    assigns \nothing;
*/
static bool order_good(const char *order, uint8_t channels)
{
    static const char letters[CHANNELS] = { 'R', 'G', 'B', 'W' };
    /*@ loop invariant 0 <= letter <= channels;
        loop assigns letter;
        loop variant channels - letter;
    */
    for (uint8_t letter = 0; letter < channels; letter++) {
        uint8_t found = 0;
        /*@ loop invariant 0 <= at <= channels && found <= at;
            loop assigns at, found;
            loop variant channels - at;
        */
        for (uint8_t at = 0; at < channels; at++)
            found += order[at] == letters[letter];
        if (found != 1)
            return false;
    }
    return channels == CHANNELS || order[CHANNELS - 1] == 0;
}

/*@ requires \valid_read(setup);
    assigns \nothing;
    ensures \result.code == COMPLAINT_NONE ==> (setup->channels == 3 || setup->channels == 4)
        && setup->pixels * setup->channels <= STORE_BYTES && setup->supply < setup->supplies;
*/
static struct complaint check_strip(const struct setup *setup)
{
    if (setup->channels != 3 && setup->channels != 4)
        return wrong_value(AT_CHANNELS);
    if (setup->pixels > STORE_BYTES / setup->channels)
        return wrong_value(AT_PIXELS);
    if (!order_good(setup->order, setup->channels))
        return wrong_value(AT_ORDER);
    if (setup->channels == 3 && setup->channel_uA[3] != 0)
        return wrong_value(AT_CHANNEL_UA);
    if (setup->supply >= setup->supplies)
        return wrong_value(AT_SUPPLY);
    return content();
}

/*@ requires \valid_read(setup) && counts_good(setup);
    assigns \nothing;
*/
static struct complaint check_rest(const struct setup *setup)
{
    if (setup->holdover_ms < HOLDOVER_LEAST || setup->holdover_ms > HOLDOVER_MOST)
        return wrong_value(AT_HOLDOVER);
    if (setup->after > AFTER_BEACON)
        return wrong_value(AT_AFTER);
    /*@ loop invariant 0 <= i <= setup->dimmers;
        loop assigns i;
        loop variant setup->dimmers - i;
    */
    for (uint8_t i = 0; i < setup->dimmers; i++)
        if (setup->dimmer[i].supply >= setup->supplies)
            return wrong_value(at_dimmer(setup->supplies, i));
    return content();
}

/* Each data line has at most one run, and the runs make up the strip. */
/*@ requires \valid_read(setup) && counts_good(setup) && (setup->channels == 3 || setup->channels == 4)
        && setup->pixels * setup->channels <= STORE_BYTES && setup->supply < setup->supplies;
    assigns \nothing;
    ensures \result.code == COMPLAINT_NONE ==> setup_good(setup);
*/
static struct complaint check_runs(const struct setup *setup)
{
    uint32_t pixels = 0;
    uint8_t taken = 0;
    /*@ loop invariant 0 <= i <= setup->runs;
        loop invariant \forall integer j; 0 <= j < i ==> setup->run[j].output < OUTPUTS;
        loop assigns i, taken, pixels;
        loop variant setup->runs - i;
    */
    for (uint8_t i = 0; i < setup->runs; i++) {
        uint8_t output = setup->run[i].output;
        if (output >= OUTPUTS || (taken & 1u << output) != 0)
            return wrong_value(at_run(setup, i));
        taken = (uint8_t)(taken | 1u << output);
        pixels += setup->run[i].pixels;
    }
    bool all = setup->runs == 0 || pixels == setup->pixels;
    return all ? content() : wrong_value((uint8_t)(at_run(setup, 0) + 1));
}

/*@ requires \valid(setup) && \valid_read(body + (0 .. SETUP_MOST - 1)) && \separated(setup, body + (0 .. SETUP_MOST - 1));
    assigns setup->pixels, setup->channels, setup->order[0 .. CHANNELS - 1], setup->channel_uA[0 .. CHANNELS - 1], setup->dark_uA,
        setup->supply, setup->holdover_ms, setup->after;
*/
static void read_strip(struct setup *setup, const uint8_t *body)
{
    setup->pixels = number_read(body + AT_PIXELS);
    setup->channels = body[AT_CHANNELS];
    /*@ loop invariant 0 <= i <= CHANNELS;
        loop assigns i, setup->order[0 .. CHANNELS - 1], setup->channel_uA[0 .. CHANNELS - 1];
        loop variant CHANNELS - i;
    */
    for (uint8_t i = 0; i < CHANNELS; i++) {
        setup->order[i] = (char)body[AT_ORDER + i];
        setup->channel_uA[i] = number_read(body + AT_CHANNEL_UA + 2 * i);
    }
    setup->dark_uA = number_read(body + AT_DARK_UA);
    setup->supply = body[AT_SUPPLY];
    setup->holdover_ms = number_read(body + AT_HOLDOVER);
    setup->after = body[AT_AFTER];
}

/*@ requires \valid(setup) && \valid_read(body + (0 .. SETUP_MOST - 1)) && \separated(setup, body + (0 .. SETUP_MOST - 1));
    requires 1 <= body[AT_SUPPLIES] <= SUPPLIES && body[AT_CEILINGS + 2 * body[AT_SUPPLIES]] <= DIMMERS;
    assigns setup->supplies, setup->ceiling_mA[0 .. SUPPLIES - 1], setup->dimmers, setup->dimmer[0 .. DIMMERS - 1];
    ensures 1 <= setup->supplies <= SUPPLIES && setup->dimmers <= DIMMERS;
*/
static void read_supplies(struct setup *setup, const uint8_t *body)
{
    setup->supplies = body[AT_SUPPLIES];
    /*@ loop invariant 0 <= i <= setup->supplies;
        loop assigns i, setup->ceiling_mA[0 .. SUPPLIES - 1];
        loop variant setup->supplies - i;
    */
    for (uint8_t i = 0; i < setup->supplies; i++)
        setup->ceiling_mA[i] = number_read(body + AT_CEILINGS + 2 * i);
    setup->dimmers = body[at_dimmers(setup->supplies)];
    /*@ loop invariant 0 <= i <= setup->dimmers;
        loop assigns i, setup->dimmer[0 .. DIMMERS - 1];
        loop variant setup->dimmers - i;
    */
    for (uint8_t i = 0; i < setup->dimmers; i++) {
        const uint8_t *from = body + at_dimmer(setup->supplies, i);
        setup->dimmer[i].supply = from[0];
        setup->dimmer[i].full_mA = number_read(from + 1);
        setup->dimmer[i].after_duty = number_read(from + 3);
    }
}

/*@ requires \valid(setup) && \valid_read(body + (0 .. SETUP_MOST - 1)) && \separated(setup, body + (0 .. SETUP_MOST - 1));
    requires 1 <= setup->supplies <= SUPPLIES && setup->dimmers <= DIMMERS && OUTPUTS == 1;
    assigns setup->runs, setup->run[0 .. OUTPUTS - 1];
    ensures setup->runs == 0;
*/
static void read_runs(struct setup *setup, const uint8_t *body, uint16_t length)
{
    setup->runs = runs_told(body, length, at_dimmer(setup->supplies, setup->dimmers));
    /*@ loop invariant 0 <= i <= setup->runs;
        loop assigns i, setup->run[0 .. OUTPUTS - 1];
        loop variant setup->runs - i;
    */
    for (uint8_t i = 0; i < setup->runs; i++) {
        const uint8_t *from = body + at_run(setup, i);
        setup->run[i].output = from[0];
        setup->run[i].pixels = number_read(from + 1);
    }
}

struct complaint setup_read(struct setup *setup, const uint8_t *body, uint16_t length)
{
    *setup = (struct setup){ 0 };
    struct complaint wrong = check_length(body, length);
    if (wrong.code != COMPLAINT_NONE)
        return wrong;
    read_strip(setup, body);
    read_supplies(setup, body);
    read_runs(setup, body, length);
    wrong = check_strip(setup);
    if (wrong.code == COMPLAINT_NONE)
        wrong = check_rest(setup);
    if (wrong.code == COMPLAINT_NONE)
        wrong = check_runs(setup);
    return wrong;
}

/*@ requires \valid_read(setup) && \valid(body + (0 .. SETUP_MOST - 1)) && \separated(setup, body + (0 .. SETUP_MOST - 1));
    assigns body[0 .. SETUP_MOST - 1];
*/
static void write_strip(const struct setup *setup, uint8_t *body)
{
    number_write(body + AT_PIXELS, setup->pixels);
    body[AT_CHANNELS] = setup->channels;
    /*@ loop invariant 0 <= i <= CHANNELS;
        loop assigns i, body[0 .. SETUP_MOST - 1];
        loop variant CHANNELS - i;
    */
    for (uint8_t i = 0; i < CHANNELS; i++) {
        body[AT_ORDER + i] = (uint8_t)setup->order[i];
        number_write(body + AT_CHANNEL_UA + 2 * i, setup->channel_uA[i]);
    }
    number_write(body + AT_DARK_UA, setup->dark_uA);
    body[AT_SUPPLY] = setup->supply;
    number_write(body + AT_HOLDOVER, setup->holdover_ms);
    body[AT_AFTER] = setup->after;
}

/*@ requires \valid_read(setup) && \valid(body + (0 .. SETUP_MOST - 1)) && \separated(setup, body + (0 .. SETUP_MOST - 1));
    requires counts_good(setup);
    assigns body[0 .. SETUP_MOST - 1];
*/
static void write_supplies(const struct setup *setup, uint8_t *body)
{
    body[AT_SUPPLIES] = setup->supplies;
    /*@ loop invariant 0 <= i <= setup->supplies;
        loop assigns i, body[0 .. SETUP_MOST - 1];
        loop variant setup->supplies - i;
    */
    for (uint8_t i = 0; i < setup->supplies; i++)
        number_write(body + AT_CEILINGS + 2 * i, setup->ceiling_mA[i]);
    body[at_dimmers(setup->supplies)] = setup->dimmers;
    /*@ loop invariant 0 <= i <= setup->dimmers;
        loop assigns i, body[0 .. SETUP_MOST - 1];
        loop variant setup->dimmers - i;
    */
    for (uint8_t i = 0; i < setup->dimmers; i++) {
        uint8_t *to = body + at_dimmer(setup->supplies, i);
        to[0] = setup->dimmer[i].supply;
        number_write(to + 1, setup->dimmer[i].full_mA);
        number_write(to + 3, setup->dimmer[i].after_duty);
    }
}

/* Runs are not sent to a host that did not send any. */
/*@ requires \valid_read(setup) && \valid(body + (0 .. SETUP_MOST - 1)) && \separated(setup, body + (0 .. SETUP_MOST - 1));
    requires counts_good(setup);
    assigns body[0 .. SETUP_MOST - 1];
    ensures \result <= SETUP_MOST;
*/
static uint8_t write_runs(const struct setup *setup, uint8_t *body)
{
    uint8_t at = at_dimmer(setup->supplies, setup->dimmers);
    if (setup->runs == 0)
        return at;
    body[at] = setup->runs;
    /*@ loop invariant 0 <= i <= setup->runs;
        loop assigns i, body[0 .. SETUP_MOST - 1];
        loop variant setup->runs - i;
    */
    for (uint8_t i = 0; i < setup->runs; i++) {
        uint8_t *to = body + at_run(setup, i);
        to[0] = setup->run[i].output;
        number_write(to + 1, setup->run[i].pixels);
    }
    return at_run(setup, setup->runs);
}

uint8_t setup_write(const struct setup *setup, uint8_t body[SETUP_MOST])
{
    write_strip(setup, body);
    write_supplies(setup, body);
    return write_runs(setup, body);
}

/* The counts are among the bytes compared, so a body of another length differs; but the runs may be missing. */
bool setup_is(const struct setup *setup, const uint8_t *body, uint16_t length)
{
    uint8_t own[SETUP_MOST];
    uint8_t written = setup_write(setup, own);
    if (runs_told(body, length, at_dimmer(setup->supplies, setup->dimmers)) != setup->runs)
        return false;
    /*@ loop invariant 0 <= i <= written;
        loop assigns i;
        loop variant written - i;
    */
    for (uint8_t i = 0; i < written; i++)
        if (own[i] != body[i])
            return false;
    return true;
}

uint16_t setup_strip_bytes(const struct setup *setup)
{
    return (uint16_t)(setup->pixels * setup->channels);
}
