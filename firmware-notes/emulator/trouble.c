#include "trouble.h"

/* xorshift64 (Marsaglia, Xorshift RNGs, Journal of Statistical Software 8(14), 2003). */
static uint64_t next_random(struct trouble *trouble)
{
    uint64_t x = trouble->random;
    x ^= x << 13;
    x ^= x >> 7;
    x ^= x << 17;
    trouble->random = x;
    return x;
}

static void begin_run(struct trouble *trouble, struct trouble_order *order)
{
    order->place = 0;
    order->chosen = next_random(trouble) % order->every;
}

static bool is_due(struct trouble *trouble, enum trouble_kind kind)
{
    struct trouble_order *order = &trouble->order[kind];
    if (order->left == 0)
        return false;
    bool due = order->place == order->chosen;
    order->place++;
    if (due) {
        order->left--;
        trouble->hurt[kind]++;
    }
    if (order->place == order->every)
        begin_run(trouble, order);
    return due;
}

void trouble_start(struct trouble *trouble, uint64_t seed)
{
    *trouble = (struct trouble){0};
    trouble->random = seed * 2 + 1;
}

void trouble_set(struct trouble *trouble, enum trouble_kind kind, uint64_t count, uint64_t every)
{
    struct trouble_order *order = &trouble->order[kind];
    order->left = count;
    order->every = every;
    begin_run(trouble, order);
}

struct trouble_outcome trouble_pass(struct trouble *trouble, uint8_t byte)
{
    bool drop = is_due(trouble, TROUBLE_DROP);
    bool flip = is_due(trouble, TROUBLE_FLIP);
    bool twice = is_due(trouble, TROUBLE_DOUBLE);
    if (flip)
        byte ^= (uint8_t)(1u << next_random(trouble) % 8);
    return (struct trouble_outcome){
        .bytes = {byte, byte},
        .count = drop ? 0 : twice ? 2 : 1,
        .hurt = drop || flip || twice,
    };
}
