#ifndef LAMPWRIGHT_BOARD_H
#define LAMPWRIGHT_BOARD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "dimmer.h"
#include "fuse.h"
#include "image.h"
#include "line.h"
#include "strip.h"
#include "trouble.h"
#include "usart.h"

/*
 * An ATmega328P at 16 MHz that runs machine code, with its serial line, its strip and its dimmers. Emulated time is counted in clock cycles
 * since power-on and continues through resets.
 */

#define BOARD_HZ 16000000ull
#define BOARD_PS_PER_CYCLE (1000000000000ull / BOARD_HZ)

struct board_events {
    void (*frame)(void *context, const struct strip_frame *frame);
    void (*lost)(void *context, enum usart_loss loss, uint8_t byte, bool hurt);
    /* Bytes for the host, after they have passed the line. */
    void (*sent)(void *context, const uint8_t *bytes, size_t count);
    void (*watchdog)(void *context);
    void (*blown)(void *context);
    void *context;
};

struct board_options {
    char strip_port;                    /* 'B', 'C' or 'D' */
    int strip_bit;                      /* 0 to 7 */
    uint64_t threshold_ps;
    uint64_t reset_ps;
    uint64_t seed;
    uint64_t byte_cycles;               /* that a byte from the host takes; 0: as the baud registers say */
};

/* Cycles in the receive interrupt, from the acceptance of its request to the end of its last instruction. */
struct board_interrupt {
    uint64_t count;
    uint64_t longest;
    uint64_t sum;
    avr_cycle_count_t entered;
};

struct board {
    avr_t *avr;
    avr_irq_t *strip_pin;
    avr_run_t run;
    bool was_asleep;
    avr_cycle_count_t horizon;
    struct board_events events;

    struct usart usart;
    struct line down;
    struct trouble up;
    struct strip strip;
    uint8_t outbox[256];
    size_t outbox_count;

    struct fuse fuse;
    struct dimmer_registers dimmers_seen;
    uint64_t frames_seen;
    bool latching;                      /* the strip may or may not have latched already */
    double shown_mA;                    /* of the strip as last latched */
    double coming_mA;                   /* of the strip as it latches */

    struct board_interrupt receive;
    size_t variables_end;
    uint64_t watchdog_resets;
    uint64_t slept;                     /* cycles that the chip's processor slept */
};

/* Powers the board on. It must not be moved in memory from then on. False if the simulator lacks the chip. */
bool board_open(struct board *board, const struct image *image, const struct board_options *options,
                struct board_events events);

void board_close(struct board *board);

uint64_t board_cycle(const struct board *board);

/* Runs up to the cycle, or a few beyond. False if the chip has stopped for good. */
bool board_run(struct board *board, uint64_t cycle);

/* Why board_run returned false. */
const char *board_failure(const struct board *board);

/* Presses the reset button. */
void board_reset(struct board *board);

/* The supply drops below the brown-out detector's threshold and recovers at once: the chip is reset, its RAM keeps its contents. */
void board_brown_out(struct board *board);

/*
 * Hangs the firmware: the program counter jumps to an endless loop, as after a wild jump. Interrupts keep running if they are on. The loop
 * occupies the last word of the flash.
 */
void board_hang(struct board *board);

/* Bytes of RAM after the firmware's variables that nothing has written since power-on: the stack's reserve. */
size_t board_ram_untouched(const struct board *board);

/* Fits a fuse to the supply of a strip that shows `shown`. It must not blow. */
void board_fuse(struct board *board, const struct fuse_rating *rating, const struct strip_frame *shown);

/* Removes the fuse. */
void board_fuse_out(struct board *board);

void board_dimmers(const struct board *board, struct dimmer dimmers[DIMMER_OUTPUTS]);

#endif
