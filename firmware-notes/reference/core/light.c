#include "light.h"

#include "clamp.h"
#include "port.h"

/* The strip has latched. */
static void raise_dimmers(struct light *light)
{
    if (!light->rising)
        return;
    for (uint8_t i = 0; i < light->dimmers_driven; i++)
        port_dimmer(i, light->duty[i]);
    light->rising = false;
}

void light_settle(struct light *light)
{
    if (port_latched())
        raise_dimmers(light);
}

/* Dimmers that the set-up drops go off with its first frame. */
void light_lower(struct light *light)
{
    while (!port_latched()) {
    }
    raise_dimmers(light);
    uint8_t dimmers = light->setup.dimmers;
    uint8_t last = light->dimmers_driven > dimmers ? light->dimmers_driven : dimmers;
    for (uint8_t i = 0; i < last; i++) {
        uint16_t is = light->frame.duty[i];
        uint16_t was = light->duty[i];
        light->duty[i] = is;
        if (is < was)
            port_dimmer(i, is);
        else
            light->rising = true;
    }
    light->dimmers_driven = dimmers;
}

void light_drive(struct light *light)
{
    uint16_t length = light->frame.length;
    port_strip(light->frame.bytes, length > light->driven ? length : light->driven);
    light->driven = length;
    light->in_force = true;
}

static void show(struct light *light)
{
    light_lower(light);
    light_drive(light);
}

bool light_dim(struct light *light)
{
    return clamp_frame(&light->setup, &light->frame);
}

void light_start(struct light *light)
{
    light->driven = STORE_BYTES;
    for (uint8_t i = 0; i < DIMMERS; i++)
        port_dimmer(i, 0);
    show(light);
}

static void cut(const struct setup *setup)
{
    struct port_run runs[OUTPUTS] = { { 0, 0 } };
    for (uint8_t i = 0; i < setup->runs; i++)
        runs[i] = (struct port_run){ setup->run[i].output, (uint16_t)(setup->run[i].pixels * setup->channels) };
    port_cut(runs, setup->runs);
}

void light_set_up(struct light *light, const struct setup *setup)
{
    light->setup = *setup;
    light->in_force = false;
    frame_clear(&light->frame, setup_strip_bytes(setup), setup->channels);
    if (OUTPUTS > 1)
        cut(setup);
}

void light_heard(struct light *light, uint32_t now_ms)
{
    light->state = LIGHT_HOST;
    light->due_ms = now_ms + light->setup.holdover_ms;
}

static uint8_t amber(char letter)
{
    switch (letter) {
    case 'R':
        return 16;
    case 'G':
        return 6;
    default:
        return 0;
    }
}

static void put_pixel(struct light *light, bool lit)
{
    uint8_t pixel[CHANNELS];
    for (uint8_t i = 0; i < light->setup.channels; i++)
        pixel[i] = lit ? amber(light->setup.order[i]) : 0;
    frame_put(&light->frame, pixel, light->setup.channels);
}

/* Shows dark, or the beacon's pixels, and the duties for running without a host. */
static void show_own(struct light *light, bool beacon_on)
{
    light->beacon_on = beacon_on;
    frame_open(&light->frame);
    for (uint16_t pixel = 0; pixel < light->setup.pixels; pixel++)
        put_pixel(light, beacon_on && pixel % BEACON_EVERY == 0);
    for (uint8_t i = 0; i < light->setup.dimmers; i++)
        light->frame.duty[i] = light->setup.dimmer[i].after_duty;
    light_dim(light);
    show(light);
}

void light_rest(struct light *light, enum afterwards what, uint32_t now_ms)
{
    light->state = what == AFTER_BEACON ? LIGHT_BEACON : LIGHT_AT_REST;
    light->due_ms = now_ms + BEACON_ON_MS;
    if (what != AFTER_KEEP || !light->in_force)
        show_own(light, what == AFTER_BEACON);
}

int32_t light_overdue(const struct light *light, uint32_t now_ms)
{
    bool changes = light->state == LIGHT_HOST || light->state == LIGHT_BEACON;
    return changes ? (int32_t)(now_ms - light->due_ms) : -1;
}

void light_change(struct light *light, uint32_t now_ms)
{
    if (light->state == LIGHT_HOST) {
        light_rest(light, (enum afterwards)light->setup.after, now_ms);
    } else {
        light->due_ms += light->beacon_on ? BEACON_OFF_MS : BEACON_ON_MS;
        show_own(light, !light->beacon_on);
    }
}
