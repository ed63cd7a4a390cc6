#include "line.h"

/* Pace before the firmware has ever turned its receiver on: 10 bits at 500 kbit/s of a 16 MHz chip. */
enum { FIRST_CHARACTER_CYCLES = 320 };

static uint8_t take(struct line *line)
{
    uint8_t byte = line->waiting[line->head];
    line->head = (line->head + 1) % LINE_ROOM;
    line->count--;
    return byte;
}

/* Finds the next byte that actually passes. A byte dropped on purpose takes its time too, like one that nobody hears. */
static bool next_character(struct line *line)
{
    if (line->passed < line->passing.count)
        return true;
    if (line->count == 0)
        return false;
    line->passing = trouble_pass(&line->trouble, take(line));
    line->passed = 0;
    return true;
}

static void begin_character(struct line *line, avr_cycle_count_t when)
{
    if (line->fixed_cycles > 0)
        line->character_cycles = line->fixed_cycles;
    else if (usart_listens(line->usart))
        line->character_cycles = usart_character_cycles(line->usart);
    line->ends = when + line->character_cycles;
    line->deaf = when < line->deaf_until;
    if (!line->deaf && line->passing.count > 0)
        usart_start_bit(line->usart, line->passing.hurt);
}

static void deliver(struct line *line)
{
    if (line->passing.count == 0)
        return;
    uint8_t byte = line->passing.bytes[line->passed++];
    if (line->deaf) {
        line->vanished++;
        return;
    }
    line->delivered++;
    usart_receive(line->usart, byte, line->passing.hurt);
}

static avr_cycle_count_t character_ended(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct line *line = param;
    (void)avr;
    deliver(line);
    line->busy = next_character(line);
    if (!line->busy)
        return 0;
    begin_character(line, when);
    return line->ends;
}

static void wake(struct line *line)
{
    if (line->busy || !next_character(line))
        return;
    line->busy = true;
    begin_character(line, line->avr->cycle);
    avr_cycle_timer_register(line->avr, line->character_cycles, character_ended, line);
}

void line_start(struct line *line, avr_t *avr, struct usart *usart, uint64_t seed, avr_cycle_count_t fixed_cycles)
{
    *line = (struct line){
        .avr = avr, .usart = usart, .fixed_cycles = fixed_cycles, .character_cycles = FIRST_CHARACTER_CYCLES,
    };
    trouble_start(&line->trouble, seed);
}

size_t line_room(const struct line *line)
{
    return LINE_ROOM - line->count;
}

void line_put(struct line *line, const uint8_t *bytes, size_t count)
{
    for (size_t i = 0; i < count; i++)
        line->waiting[(line->head + line->count++) % LINE_ROOM] = bytes[i];
    wake(line);
}

void line_deafen(struct line *line, avr_cycle_count_t cycles)
{
    line->deaf_until = line->avr->cycle + cycles;
}

void line_chip_reset(struct line *line)
{
    if (line->busy)
        avr_cycle_timer_register(line->avr, line->ends - line->avr->cycle, character_ended, line);
}

void line_cut(struct line *line)
{
    line->count = 0;
}
