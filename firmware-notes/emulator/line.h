#ifndef LAMPWRIGHT_LINE_H
#define LAMPWRIGHT_LINE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "trouble.h"
#include "usart.h"

/*
 * The wire from the host to the chip. Bytes wait here until the previous one has passed, and then take as long as the chip's own baud
 * registers say, in emulated time: the host's baud setting is ignored.
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
    struct trouble_outcome passing;     /* the rest of the byte that is passing now */
    unsigned passed;
    bool deaf;                          /* it vanishes */
    avr_cycle_count_t ends;             /* of the character that is passing now */
    avr_cycle_count_t fixed_cycles;     /* of a character, whatever the registers say; 0: as the registers say */
    avr_cycle_count_t character_cycles; /* as last seen with the receiver on */
    avr_cycle_count_t deaf_until;

    uint64_t delivered;                 /* bytes that reached the chip */
    uint64_t vanished;                  /* bytes lost to deafness */
};

/* Characters take fixed_cycles, or what the chip's registers say if that is 0. */
void line_start(struct line *line, avr_t *avr, struct usart *usart, uint64_t seed, avr_cycle_count_t fixed_cycles);

/* Bytes that line_put takes without loss. */
size_t line_room(const struct line *line);

/* Passes `count` bytes, at most line_room. */
void line_put(struct line *line, const uint8_t *bytes, size_t count);

/* Bytes that arrive within this many cycles vanish. */
void line_deafen(struct line *line, avr_cycle_count_t cycles);

/* The chip was reset, and the simulator forgot its timers: the byte in progress goes on. */
void line_chip_reset(struct line *line);

/* The host is gone: the waiting bytes are discarded. */
void line_cut(struct line *line);

#endif
