/**
 * The two C library functions that the core uses, so that no library is linked. They work by words if everything is aligned: the processor
 * faults on a word that is not.
 */
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#define IS_ALIGNED(value) (((value) & 3) == 0)

void *memcpy(void *restrict to, const void *restrict from, size_t count)
{
    uint8_t *out = to;
    const uint8_t *in = from;
    if (IS_ALIGNED((uintptr_t)out | (uintptr_t)in))
        for (; count >= 4; count -= 4, out += 4, in += 4)
            *(uint32_t *)(void *)out = *(const uint32_t *)(const void *)in;
    while (count-- > 0)
        *out++ = *in++;
    return to;
}

void *memset(void *to, int value, size_t count)
{
    uint8_t *out = to;
    uint32_t word = (uint8_t)value * 0x01010101u;
    if (IS_ALIGNED((uintptr_t)out))
        for (; count >= 4; count -= 4, out += 4)
            *(uint32_t *)(void *)out = word;
    while (count-- > 0)
        *out++ = (uint8_t)value;
    return to;
}
