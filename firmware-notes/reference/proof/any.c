/*
 * A board of which nothing is known, and a host that says anything, for Frama-C's Eva: whatever bytes are taken in whatever stretches, whatever
 * overruns there are and whatever the time is, controller.c and all that it calls reach no run-time error.
 */
#include "__fc_builtin.h"
#include "controller.h"
#include "port.h"

static struct controller controller;
static uint8_t bytes[UINT8_MAX];

void port_send(uint8_t byte)
{
    (void)byte;
}

/* Reads all that it may: an error if that is too much. */
void port_strip(const uint8_t *from, uint16_t length)
{
    //@ assert length <= STORE_BYTES;
    uint8_t last = length > 0 ? from[length - 1] : 0;
    (void)last;
}

void port_cut(const struct port_run *runs, uint8_t count)
{
    //@ assert count <= OUTPUTS;
    for (uint8_t i = 0; i < count; i++) {
        //@ assert runs[i].output < OUTPUTS;
        uint16_t length = runs[i].bytes;
        (void)length;
    }
}

bool port_latched(void)
{
    return Frama_C_interval(0, 1);
}

void port_dimmer(uint8_t index, uint16_t duty)
{
    //@ assert index < DIMMERS;
    (void)duty;
}

void port_id(uint8_t id[PORT_ID_BYTES])
{
    for (int i = 0; i < PORT_ID_BYTES; i++)
        id[i] = (uint8_t)Frama_C_interval(0, 255);
}

enum port_reset port_last_reset(void)
{
    return (enum port_reset)Frama_C_interval(PORT_RESET_UNKNOWN, PORT_RESET_WATCHDOG);
}

int main(void)
{
    controller_start(&controller);
    controller_greet();
    while (Frama_C_interval(0, 1)) {
        uint8_t count = (uint8_t)Frama_C_interval(0, UINT8_MAX);
        switch (Frama_C_interval(0, 2)) {
        case 0:
            Frama_C_make_unknown((char *)bytes, sizeof bytes);
            controller_take(&controller, bytes, count);
            break;
        case 1:
            controller_overrun(&controller);
            break;
        default:
            controller_tick(&controller, (uint32_t)Frama_C_interval(0, 0x7FFFFFFF) * 2u + (uint32_t)Frama_C_interval(0, 1));
        }
    }
    return 0;
}
