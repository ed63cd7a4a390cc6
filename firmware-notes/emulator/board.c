#include "board.h"

#include <stdlib.h>
#include <string.h>

#include <avr_eeprom.h>
#include <avr_extint.h>
#include <avr_ioport.h>
#include <sim_io.h>

#include "part.h"

enum { MCUSR = 0x54, PORF = 1 << 0, EXTRF = 1 << 1, BORF = 1 << 2 };

/* A real chip's RAM is undefined at power-on. It is painted, so that a firmware cannot rely on zeros. */
enum { RAM_BEGIN = IMAGE_RAM_BEGIN, PAINT = 0xa5 };

/* RJMP to itself (AVR instruction set manual), at the last word of the flash. */
enum { ENDLESS_LOOP = 0xcfff, LOOP_AT = IMAGE_FLASH_BYTES - 2 };

/* Maximum cycles that the simulator runs without looking at its timers when none is set. */
enum { RUN_LIMIT = 1000 };

/* ATmega328P datasheet, "Interrupt Response Time": four cycles, four more from sleep; RETI takes four. */
enum { RESPONSE_CYCLES = 4, WAKING_CYCLES = 4, RETI_CYCLES = 4 };

static uint64_t ps(avr_cycle_count_t cycle)
{
    return cycle * BOARD_PS_PER_CYCLE;
}

/*
 * The pin changes when the instruction that writes the port ends, but the simulator reports it when the instruction begins. OUT takes one
 * cycle; SBI, CBI, ST and STS take two (AVR instruction set manual).
 */
static avr_cycle_count_t write_ends(const avr_t *avr)
{
    uint8_t opcode_high = avr->flash[avr->pc + 1];
    bool is_out = (opcode_high & 0xf8) == 0xb8;
    return avr->cycle + (is_out ? 1 : 2);
}

static void strip_pin_changed(avr_irq_t *irq, uint32_t value, void *param)
{
    struct board *board = param;
    (void)irq;
    strip_edge(&board->strip, value & 1, ps(write_ends(board->avr)));
}

static void spend(avr_t *avr, avr_cycle_count_t cycles)
{
    avr->cycle += cycles;
    avr->run_cycle_count = avr->run_cycle_count > cycles ? avr->run_cycle_count - cycles : 1;
}

static void note_receive(struct board *board, avr_cycle_count_t left)
{
    uint64_t took = left - board->receive.entered;
    board->receive.count++;
    board->receive.sum += took;
    if (took > board->receive.longest)
        board->receive.longest = took;
}

/* The simulator enters an interrupt in zero time; the chip does not. */
static void interrupt_runs(avr_irq_t *irq, uint32_t value, void *param)
{
    struct board *board = param;
    avr_t *avr = board->avr;
    bool is_receive = irq == board->usart.part->rxc.irq + AVR_INT_IRQ_RUNNING;
    if (value == 0) {
        if (is_receive)
            note_receive(board, avr->cycle + RETI_CYCLES);
        return;
    }
    if (is_receive)
        board->receive.entered = avr->cycle;
    spend(avr, RESPONSE_CYCLES + (board->was_asleep ? WAKING_CYCLES : 0));
    board->was_asleep = false;
}

static void watch_interrupts(struct board *board)
{
    avr_int_table_t *table = &board->avr->interrupts;
    for (int i = 0; i < table->vector_count; i++)
        avr_irq_register_notify(table->vector[i]->irq + AVR_INT_IRQ_RUNNING, interrupt_runs, board);
}

static void flush_outbox(struct board *board)
{
    if (board->outbox_count > 0)
        board->events.sent(board->events.context, board->outbox, board->outbox_count);
    board->outbox_count = 0;
}

static void chip_sent(void *context, uint8_t byte)
{
    struct board *board = context;
    struct trouble_outcome outcome = trouble_pass(&board->up, byte);
    if (board->outbox_count + outcome.count > sizeof board->outbox)
        flush_outbox(board);
    for (unsigned i = 0; i < outcome.count; i++)
        board->outbox[board->outbox_count++] = outcome.bytes[i];
}

static void chip_idle(void *context)
{
    flush_outbox(context);
}

static void chip_lost(void *context, enum usart_loss loss, uint8_t byte, bool hurt)
{
    struct board *board = context;
    board->events.lost(board->events.context, loss, byte, hurt);
}

static avr_cycle_count_t horizon_reached(avr_t *avr, avr_cycle_count_t when, void *param)
{
    (void)avr;
    (void)when;
    (void)param;
    return 0;
}

/* Keeps a sleeping chip from running further than board_run was asked to. */
static void set_horizon(struct board *board)
{
    avr_t *avr = board->avr;
    if (board->horizon > avr->cycle)
        avr_cycle_timer_register(avr, board->horizon - avr->cycle, horizon_reached, board);
}

/* The simulator has forgotten its timers and cleared its registers; the pins are inputs. */
static void chip_reset(void *context)
{
    struct board *board = context;
    board->avr->run_cycle_limit = RUN_LIMIT;
    set_horizon(board);
    line_chip_reset(&board->down);
    strip_release(&board->strip, ps(board->avr->cycle));
    avr_raise_irq(board->strip_pin, 0);
}

static void do_not_wait(avr_t *avr, avr_cycle_count_t how_long)
{
    (void)avr;
    (void)how_long;
}

/*
 * While INT0 or INT1 is low and set to low level, as after reset, the simulator checks the pin in every cycle, whether the interrupt is on
 * or not. That is expensive, and a dimmer is on INT1.
 */
static void stop_watching_levels(avr_t *avr)
{
    avr_io_t *extint = part_find(avr, "extint");
    if (extint == NULL)
        return;
    extint->reset = NULL;
    avr_extint_set_strict_lvl_trig(avr, EXTINT_IRQ_OUT_INT0, 0);
    avr_extint_set_strict_lvl_trig(avr, EXTINT_IRQ_OUT_INT1, 0);
}

static avr_t *make_chip(const struct image *image)
{
    avr_t *avr = avr_make_mcu_by_name("atmega328p");
    if (avr == NULL)
        return NULL;
    avr_init(avr);
    avr->frequency = BOARD_HZ;
    avr->log = LOG_ERROR;
    avr->sleep = do_not_wait;
    stop_watching_levels(avr);
    memcpy(avr->flash, image->flash, IMAGE_FLASH_BYTES);
    avr->codeend = (uint32_t)image->flash_end;
    avr_eeprom_desc_t eeprom = {.ee = (uint8_t *)image->eeprom, .offset = 0, .size = IMAGE_EEPROM_BYTES};
    avr_ioctl(avr, AVR_IOCTL_EEPROM_SET, &eeprom);
    return avr;
}

static bool wire_up(struct board *board, const struct board_options *options)
{
    struct usart_events events = {chip_sent, chip_lost, chip_idle, chip_reset, board};
    board->strip_pin = avr_io_getirq(board->avr, AVR_IOCTL_IOPORT_GETIRQ(options->strip_port), options->strip_bit);
    if (board->strip_pin == NULL || !usart_attach(&board->usart, board->avr, events))
        return false;
    line_start(&board->down, board->avr, &board->usart, options->seed, options->byte_cycles);
    trouble_start(&board->up, options->seed);
    avr_irq_register_notify(board->strip_pin, strip_pin_changed, board);
    watch_interrupts(board);
    return true;
}

static void paint_ram(avr_t *avr)
{
    memset(avr->data + RAM_BEGIN, PAINT, avr->ramend + 1u - RAM_BEGIN);
}

bool board_open(struct board *board, const struct image *image, const struct board_options *options,
                struct board_events events)
{
    *board = (struct board){.events = events, .variables_end = image->variables_end};
    strip_start(&board->strip, options->threshold_ps, options->reset_ps, events.frame, events.context);
    board->avr = make_chip(image);
    if (board->avr == NULL)
        return false;
    board->run = board->avr->run;
    if (!wire_up(board, options)) {
        board_close(board);
        return false;
    }
    paint_ram(board->avr);
    avr_reset(board->avr);
    board->avr->data[MCUSR] = PORF;
    return true;
}

void board_close(struct board *board)
{
    if (board->avr == NULL)
        return;
    avr_terminate(board->avr);
    free(board->avr);
    board->avr = NULL;
}

uint64_t board_cycle(const struct board *board)
{
    return board->avr->cycle;
}

static bool is_alive(const struct board *board)
{
    return board->avr->state != cpu_Done && board->avr->state != cpu_Crashed;
}

/* The simulator's watchdog resets the chip through a different run function. */
static void note_watchdog(struct board *board)
{
    if (board->avr->run == board->run)
        return;
    board->watchdog_resets++;
    board->events.watchdog(board->events.context);
}

/* Pixels latch after a low of more than 50 us (WS2812B datasheet, early issues) or more than 280 (later ones): none before. */
#define EARLIEST_LATCH_PS 50000000ull

static bool is_latching(const struct strip *strip, uint64_t now_ps)
{
    return !strip->high && strip->frame.count > 0 && now_ps - strip->fell_ps >= EARLIEST_LATCH_PS;
}

static void load_fuse(struct board *board, uint64_t now_ps)
{
    struct dimmer dimmers[DIMMER_OUTPUTS];
    double strip_mA = board->shown_mA;
    if (board->latching && board->coming_mA > strip_mA)
        strip_mA = board->coming_mA;
    board_dimmers(board, dimmers);
    fuse_load(&board->fuse, strip_mA, dimmers, now_ps);
}

/* While pixels latch, some sooner than others, the strip counts with the larger of what it showed and what it will show. */
static bool strip_changes(struct board *board, uint64_t now_ps)
{
    const struct strip *strip = &board->strip;
    bool latching = is_latching(strip, now_ps);
    bool latched = strip->frames != board->frames_seen;
    if (!latched && latching == board->latching)
        return false;
    if (latched)
        board->shown_mA = board->coming_mA;
    if (latching)
        board->coming_mA = fuse_strip_mA(&board->fuse.rating, strip->frame.bytes, strip_kept(&strip->frame));
    board->frames_seen = strip->frames;
    board->latching = latching;
    return true;
}

static void watch_fuse(struct board *board)
{
    uint64_t now_ps = ps(board->avr->cycle);
    strip_until(&board->strip, now_ps);
    bool changes = strip_changes(board, now_ps);
    if (dimmer_touched(&board->dimmers_seen, board->avr->data) || changes)
        load_fuse(board, now_ps);
    if (fuse_until(&board->fuse, now_ps))
        board->events.blown(board->events.context);
}

static void step(struct board *board)
{
    avr_cycle_count_t before = board->avr->cycle;
    board->was_asleep = board->avr->state == cpu_Sleeping;
    bool sleeps = board->was_asleep;
    avr_run(board->avr);
    if (sleeps)
        board->slept += board->avr->cycle - before;
    note_watchdog(board);
    if (board->fuse.fitted)
        watch_fuse(board);
}

bool board_run(struct board *board, uint64_t cycle)
{
    board->horizon = cycle;
    set_horizon(board);
    while (board->avr->cycle < cycle && is_alive(board))
        step(board);
    strip_until(&board->strip, ps(board->avr->cycle));
    flush_outbox(board);
    return is_alive(board);
}

const char *board_failure(const struct board *board)
{
    return board->avr->state == cpu_Done ? "the firmware sleeps with interrupts off: nothing can wake it"
                                         : "the firmware left its code, or wrote where no memory is";
}

void board_reset(struct board *board)
{
    avr_reset(board->avr);
    board->avr->data[MCUSR] = EXTRF;
}

void board_brown_out(struct board *board)
{
    avr_reset(board->avr);
    board->avr->data[MCUSR] = BORF;
}

void board_hang(struct board *board)
{
    avr_t *avr = board->avr;
    avr->flash[LOOP_AT] = ENDLESS_LOOP & 0xff;
    avr->flash[LOOP_AT + 1] = ENDLESS_LOOP >> 8;
    avr->pc = LOOP_AT;
    if (avr->state == cpu_Sleeping)
        avr->state = cpu_Running;
}

size_t board_ram_untouched(const struct board *board)
{
    const avr_t *avr = board->avr;
    size_t at = board->variables_end;
    while (at <= avr->ramend && avr->data[at] == PAINT)
        at++;
    return at - board->variables_end;
}

void board_fuse(struct board *board, const struct fuse_rating *rating, const struct strip_frame *shown)
{
    fuse_fit(&board->fuse, rating);
    board->frames_seen = board->strip.frames;
    board->latching = false;
    board->shown_mA = fuse_strip_mA(rating, shown->bytes, strip_kept(shown));
    board->coming_mA = board->shown_mA;
    load_fuse(board, ps(board->avr->cycle));
}

void board_fuse_out(struct board *board)
{
    board->fuse.fitted = false;
}

void board_dimmers(const struct board *board, struct dimmer dimmers[DIMMER_OUTPUTS])
{
    for (int i = 0; i < DIMMER_OUTPUTS; i++)
        dimmers[i] = dimmer_reckon(board->avr->data, i, (double)BOARD_HZ);
}
