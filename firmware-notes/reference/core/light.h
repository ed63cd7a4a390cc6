/**
 * What the strip and the dimmers show: frames from the host, and without a host what the set-up says (wire.md section 5). All output passes
 * the ceiling here, and goes out in an order that stays within it.
 */
#ifndef LIGHT_H
#define LIGHT_H

#include <stdbool.h>
#include <stdint.h>

#include "frame.h"
#include "setup.h"

/** The beacon: every eighth pixel in dim amber, one second on and three off. */
#define BEACON_EVERY 8
#define BEACON_ON_MS 1000
#define BEACON_OFF_MS 3000

/** Who decides what is shown. */
enum light_state {
    LIGHT_UNSET,   /* nobody: there was no set-up */
    LIGHT_HOST,    /* the host, until the holdover is over */
    LIGHT_AT_REST, /* nobody: what is shown stays until the next frame */
    LIGHT_BEACON,  /* the beacon */
};

/** The light. All zero, it is dark and without a set-up. */
struct light {
    uint8_t state;          /* enum light_state */
    bool beacon_on;         /* the beacon's pixels are lit now */
    bool in_force;          /* what is shown was shown under the set-up in force */
    uint8_t dimmers_driven; /* dimmers that may be lit */
    bool rising;            /* dimmers that rise to `duty` wait until the strip has latched */
    uint16_t driven;        /* bytes of strip that may be lit */
    uint16_t duty[DIMMERS]; /* of what is shown */
    uint32_t due_ms;        /* when the light changes by itself: the end of the holdover or the beacon's next phase */
    struct setup setup;     /* in force, unless LIGHT_UNSET */
    struct frame frame;
};

/** Drives all pixels that the board has room for, and every dimmer, dark, whatever was lit before. */
void light_start(struct light *light);

/** Puts a valid set-up in force. The frame is then dark, and nothing is driven. Call light_heard next. */
void light_set_up(struct light *light, const struct setup *setup);

/** The host was heard: the holdover starts again. There must be a set-up. */
void light_heard(struct light *light, uint32_t now_ms);

/** Brings the whole frame within the ceiling. Returns whether it had to be dimmed. There must be a set-up. */
bool light_dim(struct light *light);

/**
 * Two steps that show the frame, which light_dim has brought within the ceiling. Strip and dimmers cannot change at the same moment:
 * light_lower changes dimmers that go down, light_drive drives the strip, and light_settle raises the dimmers that go up, so that the sum
 * stays within the ceiling throughout.
 */
void light_lower(struct light *light);
void light_drive(struct light *light);

/** Raises dimmers that wait for the strip, once it has latched. Call often. */
void light_settle(struct light *light);

/**
 * Shows what is meant for running without a host. There must be a set-up. The frame under construction is lost, unless `what` is AFTER_KEEP
 * and there is something of this set-up to keep.
 */
void light_rest(struct light *light, enum afterwards what, uint32_t now_ms);

/** By how many ms the light's own change is overdue; negative if none is due yet, or ever. */
int32_t light_overdue(const struct light *light, uint32_t now_ms);

/** Makes the change that is due. The frame under construction is lost. */
void light_change(struct light *light, uint32_t now_ms);

#endif
