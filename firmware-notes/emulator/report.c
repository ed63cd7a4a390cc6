#include "report.h"

static const char *const pulse_keys[STRIP_PULSES] = {"t0h_ns", "t0l_ns", "t1h_ns", "t1l_ns"};

static double ns(uint64_t ps)
{
    return (double)ps / 1e3;
}

static double us(uint64_t ps)
{
    return (double)ps / 1e6;
}

static uint64_t now_ps(const struct report *report)
{
    return board_cycle(report->board) * BOARD_PS_PER_CYCLE;
}

static void put_us(struct json *json, const char *key, uint64_t ps)
{
    json_number(json, key, us(ps), 4);
}

static struct json *begin_at(struct report *report, uint64_t at_ps)
{
    json_begin(&report->json);
    put_us(&report->json, "t_us", at_ps);
    return &report->json;
}

static struct json *begin(struct report *report)
{
    return begin_at(report, now_ps(report));
}

static void end(struct report *report)
{
    if (!json_end(&report->json, report->out))
        report->failed = true;
}

static void put_range(struct json *json, const char *key, const struct strip_range *range)
{
    if (range->shortest_ps > range->longest_ps) {
        json_null(json, key);
        return;
    }
    json_open_array(json, key);
    json_number(json, NULL, ns(range->shortest_ps), 1);
    json_number(json, NULL, ns(range->longest_ps), 1);
    json_close_array(json);
}

static void put_widths(struct json *json, const struct strip_widths *widths)
{
    for (int i = 0; i < STRIP_PULSES; i++)
        put_range(json, pulse_keys[i], &widths->pulse[i]);
    json_integer(json, "out_of_tolerance", (int64_t)widths->out_of_tolerance);
}

static void put_dimmer(struct json *json, const struct dimmer *dimmer)
{
    json_open_object(json, NULL);
    json_text(json, "output", dimmer->output);
    json_text(json, "pin", dimmer->pin);
    json_boolean(json, "driven", dimmer->driven);
    if (dimmer->known) {
        json_number(json, "duty", dimmer->duty, 6);
        json_number(json, "hz", dimmer->hz, 3);
    } else {
        json_null(json, "duty");
        json_null(json, "hz");
    }
    if (dimmer->from_known)
        json_number(json, "from", dimmer->from, 6);
    else
        json_null(json, "from");
    json_close_object(json);
}

static void put_dimmers(struct json *json, const struct dimmer dimmers[DIMMER_OUTPUTS])
{
    json_open_array(json, "dimmers");
    for (int i = 0; i < DIMMER_OUTPUTS; i++)
        put_dimmer(json, &dimmers[i]);
    json_close_array(json);
}

static void put_faults(struct json *json, const struct strip_frame *frame, unsigned channels)
{
    json_open_array(json, "faults");
    if (frame->widths.out_of_tolerance > 0)
        json_item(json, "out_of_tolerance");
    if (frame->pauses > 0)
        json_item(json, "pause");
    if (frame->loose_bits > 0)
        json_item(json, "loose_bits");
    if (frame->count % channels != 0)
        json_item(json, "part_pixel");
    if (frame->count > STRIP_MOST_BYTES)
        json_item(json, "too_long");
    json_close_array(json);
}

static void put_frame(struct json *json, const char *key, const struct strip_frame *frame, unsigned channels)
{
    json_hex(json, key, frame->bytes, strip_kept(frame));
    json_integer(json, "bytes", (int64_t)frame->count);
    json_integer(json, "pixels", (int64_t)(frame->count / channels));
    put_us(json, "start_us", frame->started_ps);
    if (frame->gap_known)
        put_us(json, "gap_us", frame->gap_ps);
    else
        json_null(json, "gap_us");
    put_widths(json, &frame->widths);
    put_faults(json, frame, channels);
}

void report_start(struct report *report, FILE *out, const struct board *board, unsigned channels, bool quiet)
{
    *report = (struct report){.out = out, .board = board, .channels = channels, .quiet = quiet};
}

void report_free(struct report *report)
{
    json_free(&report->json);
}

void report_ready(struct report *report, const char *link, const char *elf)
{
    struct json *json = begin(report);
    json_text(json, "event", "ready");
    json_text(json, "link", link);
    json_text(json, "elf", elf);
    end(report);
}

void report_frame(struct report *report, const struct strip_frame *frame)
{
    report->latest = *frame;
    if (report->quiet)
        return;
    report_dimmers(report);
    struct json *json = begin_at(report, frame->latched_ps);
    put_frame(json, "frame", frame, report->channels);
    put_dimmers(json, report->dimmers);
    end(report);
}

static bool take_dimmers(struct report *report)
{
    struct dimmer now[DIMMER_OUTPUTS];
    bool changed = false;
    board_dimmers(report->board, now);
    for (int i = 0; i < DIMMER_OUTPUTS; i++) {
        changed = changed || !dimmer_same(&now[i], &report->dimmers[i]);
        report->dimmers[i] = now[i];
    }
    return changed;
}

void report_dimmers(struct report *report)
{
    if (!take_dimmers(report) || report->quiet)
        return;
    put_dimmers(begin(report), report->dimmers);
    end(report);
}

static const char *count_loss(struct report *report, enum usart_loss loss, bool hurt)
{
    if (loss == USART_STARTING) {
        report->unheard++;
        return NULL;
    }
    if (hurt) {
        report->overruns_hurt++;
        return NULL;
    }
    if (loss == USART_RECEIVER_OFF) {
        report->receiver_off++;
        return "receiver_off";
    }
    report->overruns++;
    return "overrun";
}

bool report_lost(struct report *report, enum usart_loss loss, uint8_t byte, bool hurt)
{
    const char *error = count_loss(report, loss, hurt);
    if (error == NULL)
        return false;
    struct json *json = begin(report);
    json_text(json, "error", error);
    json_integer(json, "byte", byte);
    json_integer(json, "overruns", (int64_t)(report->overruns + report->receiver_off));
    end(report);
    return true;
}

void report_event(struct report *report, const char *event)
{
    json_text(begin(report), "event", event);
    end(report);
}

void report_failure(struct report *report, const char *error, const char *reason)
{
    struct json *json = begin(report);
    json_text(json, "error", error);
    json_text(json, "reason", reason);
    end(report);
}

void report_done(struct report *report, const char *command)
{
    json_text(begin(report), "answer", command);
    end(report);
}

void report_refused(struct report *report, const char *line, const char *complaint)
{
    struct json *json = begin(report);
    json_text(json, "answer", "refused");
    json_text(json, "line", line);
    json_text(json, "reason", complaint);
    end(report);
}

static void put_bytes(struct json *json, const struct report *report)
{
    json_integer(json, "bytes_down", (int64_t)report->board->down.delivered);
    json_integer(json, "bytes_waiting", (int64_t)report->board->down.count);
    json_integer(json, "bytes_vanished", (int64_t)report->board->down.vanished);
    json_integer(json, "bytes_unheard", (int64_t)report->unheard);
    json_integer(json, "bytes_up", (int64_t)report->bytes_up);
    json_integer(json, "bytes_up_lost", (int64_t)report->bytes_up_lost);
    json_integer(json, "overruns", (int64_t)report->overruns);
    json_integer(json, "receiver_off", (int64_t)report->receiver_off);
    json_integer(json, "overruns_hurt", (int64_t)report->overruns_hurt);
}

static void put_trouble(struct json *json, const char *key, const struct trouble *trouble)
{
    json_open_object(json, key);
    json_integer(json, "dropped", (int64_t)trouble->hurt[TROUBLE_DROP]);
    json_integer(json, "flipped", (int64_t)trouble->hurt[TROUBLE_FLIP]);
    json_integer(json, "doubled", (int64_t)trouble->hurt[TROUBLE_DOUBLE]);
    json_close_object(json);
}

static void put_turns(struct json *json, const struct turn *turn)
{
    json_open_object(json, "turns");
    json_integer(json, "count", (int64_t)turn->count);
    json_integer(json, "longest_cycles", (int64_t)turn->longest);
    json_number(json, "mean_cycles", turn->count > 0 ? (double)turn->sum / (double)turn->count : 0, 2);
    json_close_object(json);
}

static void put_usart(struct json *json, const struct board *board)
{
    const struct board_interrupt *receive = &board->receive;
    json_number(json, "baud", (double)BOARD_HZ / (double)usart_bit_cycles(&board->usart), 1);
    json_integer(json, "character_cycles", (int64_t)usart_character_cycles(&board->usart));
    json_integer(json, "longest_wait_cycles", (int64_t)board->usart.longest_wait);
    json_open_object(json, "receive_interrupt");
    json_integer(json, "count", (int64_t)receive->count);
    json_integer(json, "longest_cycles", (int64_t)receive->longest);
    json_number(json, "mean_cycles", receive->count > 0 ? (double)receive->sum / (double)receive->count : 0, 2);
    json_close_object(json);
    put_turns(json, &board->usart.turn);
}

static void put_fuse(struct json *json, const struct fuse *fuse)
{
    if (!fuse->fitted) {
        json_null(json, "fuse");
        return;
    }
    json_open_object(json, "fuse");
    json_number(json, "highest_mA", fuse->highest_mA, 3);
    put_us(json, "longest_over_us", fuse->longest_ps);
    json_boolean(json, "blown", fuse->blown);
    json_close_object(json);
}

static void put_strip(struct json *json, const struct report *report)
{
    const struct strip *strip = &report->board->strip;
    json_integer(json, "frames", (int64_t)strip->frames);
    put_widths(json, &strip->widths);
    if (strip->gaps.shortest_ps <= strip->gaps.longest_ps)
        put_us(json, "shortest_gap_us", strip->gaps.shortest_ps);
    else
        json_null(json, "shortest_gap_us");
    if (strip->frames == 0) {
        json_null(json, "latest");
        return;
    }
    json_open_object(json, "latest");
    put_us(json, "t_us", report->latest.latched_ps);
    put_frame(json, "frame", &report->latest, report->channels);
    json_close_object(json);
}

void report_stats(struct report *report, const struct pace *pace, const struct pty *pty)
{
    const struct board *board = report->board;
    take_dimmers(report);
    struct json *json = begin(report);
    json_text(json, "answer", "stats");
    json_boolean(json, "plugged", pty->master >= 0);
    json_boolean(json, "open", pty_is_open(pty));
    put_bytes(json, report);
    put_trouble(json, "hurt_down", &board->down.trouble);
    put_trouble(json, "hurt_up", &board->up);
    put_usart(json, board);
    json_integer(json, "ram_untouched", (int64_t)board_ram_untouched(board));
    json_integer(json, "watchdog_resets", (int64_t)board->watchdog_resets);
    json_number(json, "slept_us", us(board->slept * BOARD_PS_PER_CYCLE), 4);
    json_number(json, "lag_us", (double)pace->lost_ns / 1e3, 1);
    put_fuse(json, &board->fuse);
    put_strip(json, report);
    put_dimmers(json, report->dimmers);
    end(report);
}

void report_end(struct report *report, int status)
{
    struct json *json = begin(report);
    json_text(json, "event", "end");
    json_integer(json, "status", status);
    end(report);
}
