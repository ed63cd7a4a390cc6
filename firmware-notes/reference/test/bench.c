#include "bench.h"

#include <string.h>

#include "chance.h"
#include "port.h"

struct bench bench;

static void tell(void)
{
    if (bench.changed != NULL)
        bench.changed();
}

void bench_latch(void)
{
    if (bench.latched)
        return;
    memcpy(bench.shown, bench.strip, bench.strip_length);
    bench.latched = true;
    tell();
}

void port_send(uint8_t byte)
{
    if (bench.sent_count < BENCH_SENT_MOST)
        bench.sent[bench.sent_count++] = byte;
}

void port_strip(const uint8_t *bytes, uint16_t length)
{
    memcpy(bench.strip, bytes, length);
    bench.strip_length = length;
    bench.drives++;
    bench.latched = false;
    tell();
}

/* One look at a strip that has not latched, and at the next it has. */
bool port_latched(void)
{
    bool latched = bench.latched;
    bench_latch();
    return latched;
}

void port_dimmer(uint8_t index, uint16_t duty)
{
    bench.duty[index] = duty;
    tell();
}

void port_id(uint8_t id[PORT_ID_BYTES])
{
    memcpy(id, "lamp\0\0\0\1", PORT_ID_BYTES);
}

enum port_reset port_last_reset(void)
{
    return PORT_RESET_WATCHDOG;
}

void bench_settle(void)
{
    bench_latch();
    controller_tick(&bench.controller, bench.now_ms);
}

void bench_start(void)
{
    memset(&bench, 0, sizeof bench);
    controller_start(&bench.controller);
    controller_greet();
    bench_forget();
}

void bench_forget(void)
{
    bench.sent_count = 0;
    bench.drives = 0;
}

void bench_line(const uint8_t *bytes, size_t count, uint8_t piece)
{
    uint8_t copy[255];
    while (count > 0) {
        size_t now = 1 + chance(piece);
        if (now > count)
            now = count;
        memcpy(copy, bytes, now);
        controller_take(&bench.controller, copy, (uint8_t)now);
        bytes += now;
        count -= now;
    }
}

void bench_wait(uint32_t ms)
{
    for (; ms > 0; ms--) {
        bench_latch();
        controller_tick(&bench.controller, ++bench.now_ms);
    }
    bench_settle();
}
