#include "controller.h"

#include "answer.h"
#include "clamp.h"
#include "complaint.h"
#include "port.h"

/* Types of messages (wire.md section 2). */
enum {
    HELLO = 0x01,
    SETUP = 0x02,
    FRAME = 0x03,
    REST = 0x04,
    HERE = 0x81,
    IN_FORCE = 0x82,
    SHOWN = 0x83,
    COMPLAINT = 0x84,
};

/* The status in a SHOWN. */
enum shown {
    SHOWN_PART = 0,
    SHOWN_FRAME = 1,
    SHOWN_DIMMED = 2,
    SHOWN_RESTING = 3,
};

static void say_here(uint8_t sequence)
{
    static const uint8_t firmware[] = FIRMWARE_VERSION;
    uint8_t id[PORT_ID_BYTES];
    port_id(id);
    struct answer answer;
    answer_begin(&answer, HERE, sequence);
    answer_byte(&answer, WIRE_VERSION);
    answer_bytes(&answer, firmware, sizeof firmware);
    answer_bytes(&answer, id, sizeof id);
    answer_number(&answer, STORE_BYTES / 3);
    answer_number(&answer, PACKET_MOST);
    answer_byte(&answer, DIMMERS);
    answer_byte(&answer, CREDITS);
    answer_number(&answer, STRIP_BYTE_NS);
    answer_byte(&answer, LISTENS);
    answer_byte(&answer, OUTPUTS);
    answer_byte(&answer, (uint8_t)port_last_reset());
    answer_end(&answer);
}

/*
 * The body of the message being answered has been read, so the echo may use its memory. Like other functions with large, rarely needed
 * variables, this is kept separate so that they are not on the stack all the time.
 */
__attribute__((noinline)) static void say_in_force(struct controller *controller)
{
    uint8_t length = setup_write(&controller->light.setup, controller->body);
    struct answer answer;
    answer_begin(&answer, IN_FORCE, controller->last_sequence);
    answer_bytes(&answer, controller->body, length);
    answer_end(&answer);
}

static void begin_shown(const struct controller *controller, struct answer *answer, enum shown what)
{
    answer_begin(answer, SHOWN, controller->last_sequence);
    answer_byte(answer, (uint8_t)what);
    answer_number(answer, controller->broken);
}

static void say_shown(const struct controller *controller, enum shown what)
{
    struct answer answer;
    begin_shown(controller, &answer, what);
    answer_number(&answer, controller->overruns);
    answer_number(&answer, controller->dimmed);
    answer_end(&answer);
}

__attribute__((noinline)) static void say_complaint(const struct controller *controller, struct complaint complaint)
{
    struct answer answer;
    answer_begin(&answer, COMPLAINT, controller->last_sequence);
    answer_byte(&answer, complaint.code);
    answer_number(&answer, complaint.detail);
    answer_end(&answer);
}

static bool is_set_up(const struct controller *controller)
{
    return controller->light.state != LIGHT_UNSET;
}

/* Each of the following answers one message, or finds an error and leaves the answer to the caller. */

static struct complaint on_hello(struct controller *controller)
{
    if (controller->reader.length < 1)
        return complain(COMPLAINT_LENGTH, 1);
    if (controller->body[0] != WIRE_VERSION)
        return complain(COMPLAINT_VERSION, WIRE_VERSION);
    say_here(controller->last_sequence);
    return content();
}

static void put_in_force(struct controller *controller, const struct setup *setup)
{
    parts_forget(&controller->parts);
    light_set_up(&controller->light, setup);
}

/* Kept separate so that its set-up is not on the stack together with the answer. */
__attribute__((noinline)) static struct complaint adopt_setup(struct controller *controller)
{
    struct setup setup;
    struct complaint wrong = setup_read(&setup, controller->body, controller->reader.length);
    if (wrong.code != COMPLAINT_NONE)
        return wrong;
    if (!is_set_up(controller) || !setup_is(&controller->light.setup, controller->body, controller->reader.length))
        put_in_force(controller, &setup);
    return content();
}

static struct complaint on_setup(struct controller *controller)
{
    struct complaint wrong = adopt_setup(controller);
    if (wrong.code != COMPLAINT_NONE)
        return wrong;
    light_heard(&controller->light, controller->now_ms);
    say_in_force(controller);
    uint16_t dark_mA = clamp_dark_over(&controller->light.setup);
    return dark_mA == 0 ? content() : complain(COMPLAINT_DARK_CURRENT, dark_mA);
}

/*
 * The answer starts before the strip is driven, so that what the transmitter holds goes out meanwhile and dimmers are set while it is busy.
 * The host may send again when it has the whole answer, and its end is sent when the board listens again.
 */
static void show_frame(struct controller *controller)
{
    struct answer answer;
    bool dimmed = light_dim(&controller->light);
    controller->dimmed = (uint16_t)(controller->dimmed + dimmed);
    begin_shown(controller, &answer, dimmed ? SHOWN_DIMMED : SHOWN_FRAME);
    light_lower(&controller->light);
    answer_number(&answer, controller->overruns);
    light_drive(&controller->light);
    answer_number(&answer, controller->dimmed);
    answer_end(&answer);
}

static struct complaint on_frame(struct controller *controller)
{
    if (!is_set_up(controller))
        return complain(COMPLAINT_NOT_SET_UP, 0);
    struct complaint wrong = content();
    enum part_end end = parts_end(&controller->parts, &controller->light.frame, &wrong);
    if (end == PART_LAST)
        show_frame(controller);
    if (end == PART_TAKEN)
        say_shown(controller, SHOWN_PART);
    if (end != PART_WRONG)
        light_heard(&controller->light, controller->now_ms);
    return wrong;
}

static struct complaint on_rest(struct controller *controller)
{
    if (!is_set_up(controller))
        return complain(COMPLAINT_NOT_SET_UP, 0);
    if (controller->reader.length < 1)
        return complain(COMPLAINT_LENGTH, 1);
    if (controller->body[0] > AFTER_BEACON)
        return complain(COMPLAINT_VALUE, 0);
    parts_forget(&controller->parts);
    light_rest(&controller->light, (enum afterwards)controller->body[0], controller->now_ms);
    say_shown(controller, SHOWN_RESTING);
    return content();
}

static struct complaint on_message(struct controller *controller)
{
    switch (controller->reader.type) {
    case HELLO:
        return on_hello(controller);
    case SETUP:
        return on_setup(controller);
    case FRAME:
        return on_frame(controller);
    case REST:
        return on_rest(controller);
    default:
        return complain(COMPLAINT_TYPE, controller->reader.type);
    }
}

static struct complaint on_broken(struct controller *controller)
{
    controller->broken++;
    parts_forget(&controller->parts);
    return complain(COMPLAINT_BROKEN, controller->reader.came);
}

static struct complaint on_too_long(struct controller *controller)
{
    parts_forget(&controller->parts);
    return complain(COMPLAINT_TOO_LONG, PACKET_MOST);
}

/*
 * A part belongs to the frame of the previous part only if every message between them has arrived: if a sequence number does not follow the
 * previous one, something was lost, and it may have been the first part of another frame.
 */
static void begin_body(struct controller *controller)
{
    if (controller->reader.sequence != (uint8_t)(controller->last_sequence + 1))
        parts_forget(&controller->parts);
    if (controller->reader.type == FRAME)
        parts_begin(&controller->parts);
}

/* Keeps as many of the `count` bytes, the last of the body so far, as fit; no message but FRAME has more. */
static void keep_body(struct controller *controller, const uint8_t *bytes, uint8_t count)
{
    uint16_t at = (uint16_t)(controller->reader.length - count);
    for (; count > 0 && at < SETUP_MOST; count--)
        controller->body[at++] = *bytes++;
}

static void take_body(struct controller *controller, const uint8_t *bytes, uint8_t count)
{
    struct light *light = &controller->light;
    if (controller->reader.type != FRAME)
        keep_body(controller, bytes, count);
    else if (is_set_up(controller))
        parts_take(&controller->parts, &light->frame, light->setup.dimmers, bytes, count);
}

static void end_packet(struct controller *controller, uint8_t event)
{
    controller->overrun = false;
    struct complaint wrong;
    if (event == PACKET_BROKEN) {
        wrong = on_broken(controller);
    } else if (event == PACKET_TOO_LONG) {
        wrong = on_too_long(controller);
    } else {
        controller->last_sequence = controller->reader.sequence;
        wrong = on_message(controller);
    }
    if (wrong.code != COMPLAINT_NONE)
        say_complaint(controller, wrong);
}

void controller_start(struct controller *controller)
{
    packet_start(&controller->reader);
    light_start(&controller->light);
}

void controller_greet(void)
{
    say_here(0);
}

void controller_take(struct controller *controller, uint8_t *bytes, uint8_t count)
{
    /*@ loop invariant 0 <= count <= \at(count, Pre) && bytes == \at(bytes, Pre) + (\at(count, Pre) - count); */
    while (count > 0) {
        struct packet_step step = packet_take(&controller->reader, bytes, count);
        if (step.body > 0)
            take_body(controller, bytes, step.body);
        if (step.event == PACKET_BEGUN)
            begin_body(controller);
        else if (step.event != PACKET_NOTHING)
            end_packet(controller, step.event);
        bytes += step.used;
        count = (uint8_t)(count - step.used);
    }
}

void controller_overrun(struct controller *controller)
{
    packet_spoil(&controller->reader);
    if (!controller->overrun)
        controller->overruns++;
    controller->overrun = true;
}

void controller_tick(struct controller *controller, uint32_t now_ms)
{
    controller->now_ms = now_ms;
    light_settle(&controller->light);
    int32_t overdue = light_overdue(&controller->light, now_ms);
    if (overdue < 0)
        return;
    if (packet_under_way(&controller->reader) && overdue < PATIENCE_MS)
        return;
    parts_forget(&controller->parts);
    light_change(&controller->light, now_ms);
}
