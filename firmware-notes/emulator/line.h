#ifndef LAMPWRIGHT_LINE_H
#define LAMPWRIGHT_LINE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "trouble.h"
#include "usart.h"

/*
 * The wire from the host to the chip. Bytes wait here until the one before has passed, and then take as long as the
 * chip's own baud registers say, in emulated time: what the host believes the baud to be is not looked at.
 */

enum { LINE_ROOM = 4096 };

struct line {
    avr_t *avr;
    struct usart *usart;
    struct trouble trouble;

    uint8_t waiting[LINE_ROOM];
    size_t head;
    size_t count;

    bool busy;
    struct trouble_outcome passing;     /* what is left of the byte that is passing now */
    unsigned passed;
    bool deaf;                          /* it vanishes */
    avr_cycle_count_t ends;             /* of the character that is passing now */
    avr_cycle_count_t fixed_cycles;     /* of a character, whatever the registers say; 0: they say it */
    avr_cycle_count_t character_cycles; /* as last seen with the receiver on */
    avr_cycle_count_t deaf_until;

    uint64_t delivered;                 /* bytes that reached the chip */
    uint64_t vanished;                  /* bytes lost to deafness */
};

/* Characters take fixed_cycles, or what the chip's registers say where that is 0. */
void line_start(struct line *line, avr_t *avr, struct usart *usart, uint64_t seed, avr_cycle_count_t fixed_cycles);

/* Bytes that line_put takes without loss. */
size_t line_room(const struct line *line);

/* Hands over `count` bytes, line_room at most. */
void line_put(struct line *line, const uint8_t *bytes, size_t count);

/* Bytes that come within so many cycles vanish. */
void line_deafen(struct line *line, avr_cycle_count_t cycles);

/* The chip was reset, and the simulator forgot its timers: what passes goes on. */
void line_chip_reset(struct line *line);

/* The host is gone: what waits is forgotten. */
void line_cut(struct line *line);

#endif
