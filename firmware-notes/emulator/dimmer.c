#include "dimmer.h"

/* Addresses in data memory, ATmega328P datasheet, register summary. */
enum {
    DDRB = 0x24, PORTB = 0x25, DDRD = 0x2a, PORTD = 0x2b,
    TCCR0A = 0x44, OCR0A = 0x47, OCR0B = 0x48,
    TCCR1A = 0x80, ICR1 = 0x86, OCR1A = 0x88, OCR1B = 0x8a,
    TCCR2A = 0xb0, OCR2A = 0xb3, OCR2B = 0xb4,
};

enum wave { WAVE_NONE, WAVE_NORMAL, WAVE_CTC, WAVE_FAST, WAVE_CORRECT };

enum { TOP_OCRA = -1, TOP_ICR = -2 };

struct mode {
    enum wave wave;
    int top;
};

/* Datasheet tables "Waveform Generation Mode Bit Description" of timers 0 and 2, and of timer 1. */
static const struct mode modes_8[8] = {
    {WAVE_NORMAL, 0xff}, {WAVE_CORRECT, 0xff}, {WAVE_CTC, TOP_OCRA}, {WAVE_FAST, 0xff},
    {WAVE_NONE, 0}, {WAVE_CORRECT, TOP_OCRA}, {WAVE_NONE, 0}, {WAVE_FAST, TOP_OCRA},
};
static const struct mode modes_16[16] = {
    {WAVE_NORMAL, 0xffff}, {WAVE_CORRECT, 0xff}, {WAVE_CORRECT, 0x1ff}, {WAVE_CORRECT, 0x3ff},
    {WAVE_CTC, TOP_OCRA}, {WAVE_FAST, 0xff}, {WAVE_FAST, 0x1ff}, {WAVE_FAST, 0x3ff},
    {WAVE_CORRECT, TOP_ICR}, {WAVE_CORRECT, TOP_OCRA}, {WAVE_CORRECT, TOP_ICR}, {WAVE_CORRECT, TOP_OCRA},
    {WAVE_CTC, TOP_ICR}, {WAVE_NONE, 0}, {WAVE_FAST, TOP_ICR}, {WAVE_FAST, TOP_OCRA},
};

/* Datasheet tables "Clock Select Bit Description"; 0 is stopped or clocked externally. */
static const int prescalers_01[8] = {0, 1, 8, 64, 256, 1024, 0, 0};
static const int prescalers_2[8] = {0, 1, 8, 32, 64, 128, 256, 1024};

struct output {
    const char *name;
    const char *pin;
    int ddr;
    int port;
    int bit;
    int control;                        /* TCCRnA; TCCRnB follows it */
    int com_shift;
    int compare;
    int compare_a;
    bool wide;
    const int *prescalers;
};

static const struct output outputs[DIMMER_OUTPUTS] = {
    {"OC0A", "PD6", DDRD, PORTD, 6, TCCR0A, 6, OCR0A, OCR0A, false, prescalers_01},
    {"OC0B", "PD5", DDRD, PORTD, 5, TCCR0A, 4, OCR0B, OCR0A, false, prescalers_01},
    {"OC1A", "PB1", DDRB, PORTB, 1, TCCR1A, 6, OCR1A, OCR1A, true, prescalers_01},
    {"OC1B", "PB2", DDRB, PORTB, 2, TCCR1A, 4, OCR1B, OCR1A, true, prescalers_01},
    {"OC2A", "PB3", DDRB, PORTB, 3, TCCR2A, 6, OCR2A, OCR2A, false, prescalers_2},
    {"OC2B", "PD3", DDRD, PORTD, 3, TCCR2A, 4, OCR2B, OCR2A, false, prescalers_2},
};

static int read_register(const uint8_t *data, int address, bool wide)
{
    return wide ? data[address] | data[address + 1] << 8 : data[address];
}

static struct mode read_mode(const uint8_t *data, const struct output *output)
{
    int low = data[output->control] & 3;
    int high = data[output->control + 1] >> 3;
    return output->wide ? modes_16[low | (high & 3) << 2] : modes_8[low | (high & 1) << 2];
}

static int read_top(const uint8_t *data, const struct output *output, struct mode mode)
{
    if (mode.top == TOP_OCRA)
        return read_register(data, output->compare_a, output->wide);
    if (mode.top == TOP_ICR)
        return read_register(data, ICR1, true);
    return mode.top;
}

static void hold_level(struct dimmer *dimmer, bool high)
{
    dimmer->known = true;
    dimmer->duty = high;
    dimmer->hz = 0;
}

static void toggle(struct dimmer *dimmer, double compares_hz)
{
    dimmer->known = true;
    dimmer->duty = 0.5;
    dimmer->hz = compares_hz / 2;
}

/* A compare value that is never left or never reached leaves the level as it is. */
static void modulate(struct dimmer *dimmer, double high, double cycles_hz, bool inverted)
{
    double share = high < 1 ? high : 1;
    dimmer->known = true;
    dimmer->duty = inverted ? 1 - share : share;
    dimmer->hz = share > 0 && share < 1 ? cycles_hz : 0;
}

/* Datasheet, "Fast PWM Mode": high from BOTTOM to the compare match or, inverted, from there to BOTTOM. */
static void place(struct dimmer *dimmer, bool inverted)
{
    dimmer->from_known = dimmer->hz > 0;
    dimmer->from = inverted ? 1 - dimmer->duty : 0;
}

/* In PWM modes COM 1 toggles output A where OCRA is TOP, and in timer 1's mode 14; datasheet, "Compare Output Mode". */
static bool may_toggle(const struct output *output, struct mode mode)
{
    bool is_a = output->compare == output->compare_a;
    return is_a && (mode.top == TOP_OCRA || (mode.top == TOP_ICR && mode.wave == WAVE_FAST));
}

static void calculate_wave(struct dimmer *dimmer, const uint8_t *data, const struct output *output, double tick_hz)
{
    struct mode mode = read_mode(data, output);
    int com = data[output->control] >> output->com_shift & 3;
    int top = read_top(data, output, mode);
    int compare = read_register(data, output->compare, output->wide);
    bool toggles = com == 1 && may_toggle(output, mode);

    if (mode.wave == WAVE_NORMAL || mode.wave == WAVE_CTC) {
        if (com == 1)
            toggle(dimmer, tick_hz / (top + 1.0));
        else
            hold_level(dimmer, com == 3);
    } else if (mode.wave == WAVE_FAST) {
        if (toggles)
            toggle(dimmer, tick_hz / (top + 1.0));
        else
            modulate(dimmer, (compare + 1.0) / (top + 1.0), tick_hz / (top + 1.0), com == 3);
        if (!toggles)
            place(dimmer, com == 3);
    } else if (mode.wave == WAVE_CORRECT && top > 0) {
        if (toggles)
            toggle(dimmer, tick_hz / (2.0 * top));
        else
            modulate(dimmer, (double)compare / top, tick_hz / (2.0 * top), com == 3);
    }
}

/* COM 0 leaves the pin to its port, and so does COM 1 in a PWM mode where it may not toggle. */
static bool belongs_to_port(const uint8_t *data, const struct output *output)
{
    int com = data[output->control] >> output->com_shift & 3;
    struct mode mode = read_mode(data, output);
    bool pwm = mode.wave == WAVE_FAST || mode.wave == WAVE_CORRECT;
    return com == 0 || (com == 1 && pwm && !may_toggle(output, mode));
}

struct dimmer dimmer_reckon(const uint8_t *data, int which, double clock_hz)
{
    const struct output *output = &outputs[which];
    int prescaler = output->prescalers[data[output->control + 1] & 7];
    struct dimmer dimmer = {.output = output->name, .pin = output->pin};

    dimmer.driven = data[output->ddr] >> output->bit & 1;
    if (!dimmer.driven)
        hold_level(&dimmer, false);
    else if (belongs_to_port(data, output))
        hold_level(&dimmer, data[output->port] >> output->bit & 1);
    else if (prescaler > 0)
        calculate_wave(&dimmer, data, output, clock_hz / prescaler);
    return dimmer;
}

bool dimmer_touched(struct dimmer_registers *seen, const uint8_t *data)
{
    static const struct {
        uint8_t address;
        uint8_t bits;
    } watched[DIMMER_REGISTERS] = {
        {DDRB, 0x0e}, {PORTB, 0x0e}, {DDRD, 0x68}, {PORTD, 0x68},
        {TCCR0A, 0xff}, {TCCR0A + 1, 0xff}, {OCR0A, 0xff}, {OCR0B, 0xff},
        {TCCR1A, 0xff}, {TCCR1A + 1, 0xff}, {ICR1, 0xff}, {ICR1 + 1, 0xff},
        {OCR1A, 0xff}, {OCR1A + 1, 0xff}, {OCR1B, 0xff}, {OCR1B + 1, 0xff},
        {TCCR2A, 0xff}, {TCCR2A + 1, 0xff}, {OCR2A, 0xff}, {OCR2B, 0xff},
    };
    bool touched = false;
    for (int i = 0; i < DIMMER_REGISTERS; i++) {
        uint8_t now = data[watched[i].address] & watched[i].bits;
        touched = touched || now != seen->value[i];
        seen->value[i] = now;
    }
    return touched;
}

bool dimmer_same(const struct dimmer *a, const struct dimmer *b)
{
    return a->driven == b->driven && a->known == b->known && a->duty == b->duty && a->hz == b->hz
        && a->from_known == b->from_known && a->from == b->from;
}
