#include <errno.h>
#include <poll.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "board.h"
#include "command.h"
#include "options.h"
#include "pace.h"
#include "pty.h"
#include "report.h"

enum { STATUS_GOOD, STATUS_FAILED, STATUS_WRONG, STATUS_OVERRUN, STATUS_STOPPED, STATUS_BLOWN };

enum { LONGEST_COMMAND = 256 };

/* How far the chip runs, and how long the board sleeps, before it looks at its inputs again. */
#define STEP_US 250
#define STEP_NS (STEP_US * 1000ull)
#define STEP_CYCLES (STEP_US * BOARD_HZ / 1000000)

struct session {
    struct options options;
    struct board board;
    struct pty pty;
    struct pace pace;
    struct report report;

    char command[LONGEST_COMMAND];
    size_t command_length;
    bool command_too_long;
    bool was_open;
    bool stalled;
    uint64_t stalled_until_ns;
    pid_t parent;
    bool ended;
    int status;
};

static volatile sig_atomic_t asked_to_end;

static void ask_to_end(int signal)
{
    (void)signal;
    asked_to_end = 1;
}

static void catch_signals(void)
{
    struct sigaction action = {.sa_handler = ask_to_end};
    sigaction(SIGTERM, &action, NULL);
    sigaction(SIGINT, &action, NULL);
    sigaction(SIGHUP, &action, NULL);
    action.sa_handler = SIG_IGN;
    sigaction(SIGPIPE, &action, NULL);
}

static uint64_t now_ns(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (uint64_t)now.tv_sec * 1000000000 + (uint64_t)now.tv_nsec;
}

static void end(struct session *session, int status)
{
    session->ended = true;
    if (status > session->status)
        session->status = status;
}

static void frame_latched(void *context, const struct strip_frame *frame)
{
    struct session *session = context;
    report_frame(&session->report, frame);
}

static void byte_lost(void *context, enum usart_loss loss, uint8_t byte, bool hurt)
{
    struct session *session = context;
    if (!report_lost(&session->report, loss, byte, hurt))
        return;
    if (session->status < STATUS_OVERRUN)
        session->status = STATUS_OVERRUN;
    if (session->options.strict)
        end(session, STATUS_OVERRUN);
}

static void bytes_sent(void *context, const uint8_t *bytes, size_t count)
{
    struct session *session = context;
    size_t written = pty_write(&session->pty, bytes, count);
    session->report.bytes_up += written;
    session->report.bytes_up_lost += count - written;
}

static void watchdog_bit(void *context)
{
    struct session *session = context;
    report_event(&session->report, "watchdog");
}

static void fuse_blew(void *context)
{
    struct session *session = context;
    report_failure(&session->report, "fuse", "strip and dimmers took more than the fuse bears, for too long");
    session->status = STATUS_BLOWN;
}

static void fit_fuse(struct session *session, const struct fuse_rating *rating)
{
    if (rating->most_mA > 0)
        board_fuse(&session->board, rating, &session->report.latest);
    else
        board_fuse_out(&session->board);
}

static void plug(struct session *session)
{
    if (session->pty.master >= 0)
        return;
    session->was_open = false;
    if (pty_plug(&session->pty, session->options.link))
        return;
    report_failure(&session->report, "plug", strerror(errno));
    end(session, STATUS_FAILED);
}

static void unplug(struct session *session)
{
    pty_unplug(&session->pty);
    line_cut(&session->board.down);
}

static void stall(struct session *session, uint64_t ms)
{
    session->stalled = true;
    session->stalled_until_ns = now_ns() + ms * 1000000;
}

static void set_trouble(struct session *session, const struct command *command)
{
    struct trouble *trouble = command->up ? &session->board.up : &session->board.down.trouble;
    trouble_set(trouble, command->trouble, command->count, command->every);
}

static void obey(struct session *session, const struct command *command)
{
    switch (command->kind) {
    case COMMAND_DEAF:
        line_deafen(&session->board.down, command->ms * BOARD_HZ / 1000);
        break;
    case COMMAND_TROUBLE:
        set_trouble(session, command);
        break;
    case COMMAND_STALL:
        stall(session, command->ms);
        break;
    case COMMAND_FUSE:
        fit_fuse(session, &command->fuse);
        break;
    case COMMAND_RESET:
        board_reset(&session->board);
        break;
    case COMMAND_BROWN_OUT:
        board_brown_out(&session->board);
        break;
    case COMMAND_HANG:
        board_hang(&session->board);
        break;
    case COMMAND_UNPLUG:
        unplug(session);
        break;
    case COMMAND_PLUG:
        plug(session);
        break;
    case COMMAND_QUIT:
        end(session, STATUS_GOOD);
        break;
    case COMMAND_STATS:
        break;
    }
}

static void answer(struct session *session, const struct command *command, const char *line)
{
    if (command->kind == COMMAND_STATS)
        report_stats(&session->report, &session->pace, &session->pty);
    else
        report_done(&session->report, line);
}

static void take_command(struct session *session)
{
    struct command command;
    const char *complaint = "a command is shorter than that";
    session->command[session->command_length] = 0;
    if (!session->command_too_long && command_read(session->command, &command, &complaint)) {
        obey(session, &command);
        answer(session, &command, session->command);
    } else {
        report_refused(&session->report, session->command, complaint);
    }
    session->command_length = 0;
    session->command_too_long = false;
}

static void take_character(struct session *session, char character)
{
    if (character == '\n')
        take_command(session);
    else if (session->command_length < LONGEST_COMMAND - 1)
        session->command[session->command_length++] = character;
    else
        session->command_too_long = true;
}

static void read_commands(struct session *session)
{
    char text[LONGEST_COMMAND];
    struct pollfd input = {.fd = STDIN_FILENO, .events = POLLIN};
    if (poll(&input, 1, 0) <= 0)
        return;
    ssize_t count = read(STDIN_FILENO, text, sizeof text);
    if (count == 0 || (count < 0 && errno != EINTR))
        end(session, STATUS_GOOD);
    for (ssize_t i = 0; i < count && !session->ended; i++)
        take_character(session, text[i]);
}

static void read_host(struct session *session)
{
    uint8_t bytes[1024];
    size_t room = line_room(&session->board.down);
    size_t count = pty_read(&session->pty, bytes, room < sizeof bytes ? room : sizeof bytes);
    line_put(&session->board.down, bytes, count);
}

static void watch_host(struct session *session)
{
    bool open = pty_is_open(&session->pty);
    if (open == session->was_open)
        return;
    session->was_open = open;
    if (!open)
        pty_forget(&session->pty);
    if (open && session->options.reset_on_open)
        board_reset(&session->board);
    report_event(&session->report, open ? "opened" : "closed");
}

static void run_chip(struct session *session)
{
    uint64_t target = pace_target(&session->pace, now_ns(), board_cycle(&session->board));
    while (board_cycle(&session->board) < target && !session->ended) {
        uint64_t step = board_cycle(&session->board) + STEP_CYCLES;
        read_host(session);
        if (board_run(&session->board, step < target ? step : target))
            continue;
        report_failure(&session->report, "stopped", board_failure(&session->board));
        end(session, STATUS_STOPPED);
    }
    report_dimmers(&session->report);
}

static void wait_for_input(struct session *session, uint64_t most_ns)
{
    bool reads_host = session->was_open && line_room(&session->board.down) > 0 && !session->stalled;
    struct pollfd inputs[] = {
        {.fd = STDIN_FILENO, .events = POLLIN},
        {.fd = reads_host ? session->pty.master : -1, .events = POLLIN},
    };
    struct timespec timeout = {.tv_nsec = (long)most_ns};
    ppoll(inputs, 2, &timeout, NULL);
}

static void sit_out_stall(struct session *session)
{
    if (now_ns() < session->stalled_until_ns) {
        wait_for_input(session, STEP_NS);
        return;
    }
    session->stalled = false;
    pace_forgive(&session->pace, now_ns(), board_cycle(&session->board));
}

static void turn(struct session *session)
{
    read_commands(session);
    if (session->stalled) {
        sit_out_stall(session);
        return;
    }
    watch_host(session);
    run_chip(session);
    if (!session->options.free)
        wait_for_input(session, STEP_NS);
}

/* An orphan exits, and so does a board that nobody hears. */
static bool should_end(const struct session *session)
{
    return asked_to_end || session->ended || session->report.failed || getppid() != session->parent;
}

static void run(struct session *session)
{
    pace_start(&session->pace, session->options.free, BOARD_HZ, now_ns(), board_cycle(&session->board));
    report_ready(&session->report, session->options.link, session->options.elf);
    while (!should_end(session))
        turn(session);
    report_end(&session->report, session->status);
}

static bool load(struct session *session)
{
    static struct image image;
    const char *complaint;
    struct board_events events = {frame_latched, byte_lost, bytes_sent, watchdog_bit, fuse_blew, session};
    if (!image_read(session->options.elf, &image, &complaint)) {
        fprintf(stderr, "board: %s: %s\n", session->options.elf, complaint);
        return false;
    }
    image_preload(&image, &session->options.eeprom);
    if (!board_open(&session->board, &image, &session->options.board, events)) {
        fprintf(stderr, "board: the simulator library has no ATmega328P; install simavr 1.6 or later\n");
        return false;
    }
    return true;
}

static bool attach(struct session *session)
{
    if (pty_plug(&session->pty, session->options.link))
        return true;
    fprintf(stderr, "board: %s: cannot make the link: %s\n", session->options.link, strerror(errno));
    return false;
}

static int serve(struct session *session)
{
    if (!load(session))
        return STATUS_FAILED;
    report_start(&session->report, stdout, &session->board, session->options.channels, session->options.quiet);
    if (attach(session))
        run(session);
    else
        session->status = STATUS_FAILED;
    pty_unplug(&session->pty);
    report_free(&session->report);
    board_close(&session->board);
    return session->status;
}

int main(int argc, char **argv)
{
    static struct session session;
    session.pty.master = -1;
    session.parent = getppid();
    catch_signals();
    switch (options_read(&session.options, argc, argv)) {
    case OPTIONS_HELP:
        fputs(options_help, stdout);
        return STATUS_GOOD;
    case OPTIONS_WRONG:
        return STATUS_WRONG;
    case OPTIONS_GOOD:
        break;
    }
    return serve(&session);
}
