/**
 * Received bytes that wait: an interrupt puts them in, the main loop takes stretches of them out. It holds more than the credits allow in
 * transit at one time.
 */
#ifndef RING_H
#define RING_H

#include <stdbool.h>
#include <stdint.h>

#include "limits.h"

#define RING_BYTES 32768u

_Static_assert(RING_BYTES > CREDITS * (PACKET_MOST + PACKET_MOST / 254 + 2), "credit allows more than the ring holds");

struct ring {
    volatile uint32_t head; /* where the next byte goes */
    volatile uint32_t tail; /* the oldest byte */
    uint8_t bytes[RING_BYTES];
};

/** Free space in bytes. */
static inline uint32_t ring_room(const struct ring *ring)
{
    return (ring->tail + RING_BYTES - ring->head - 1) % RING_BYTES;
}

/** Puts one byte in. There must be room. */
static inline void ring_put(struct ring *ring, uint8_t byte)
{
    uint32_t head = ring->head;
    ring->bytes[head] = byte;
    ring->head = (head + 1) % RING_BYTES;
}

/** How many of the oldest bytes are contiguous at `*bytes`, 0 to 255. */
static inline uint8_t ring_waiting(struct ring *ring, uint8_t **bytes)
{
    uint32_t head = ring->head;
    uint32_t tail = ring->tail;
    uint32_t count = (head < tail ? RING_BYTES : head) - tail;
    __asm__ volatile("" ::: "memory"); /* what the interrupt wrote before it moved `head` is visible now */
    *bytes = ring->bytes + tail;
    return (uint8_t)(count < UINT8_MAX ? count : UINT8_MAX);
}

/** Drops the oldest `count` of the contiguous waiting bytes. */
static inline void ring_drop(struct ring *ring, uint8_t count)
{
    ring->tail = (ring->tail + count) % RING_BYTES;
}

#endif
