/**
 * Consistent Overhead Byte Stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2), 1999), a byte at a time.
 */
#ifndef COBS_H
#define COBS_H

#include <stdbool.h>
#include <stdint.h>

/** Maximum length of one block. */
#define COBS_BLOCK 254

/** A decoder within one packet. All zero, it is ready for a packet's first byte. */
struct cobs {
    uint8_t left;  /* bytes of the block still to come */
    bool zero_due; /* the block ends with an implied zero, unless the packet ends there */
};

/** What one byte from the line produced. */
enum cobs_step {
    COBS_NOTHING, /* no byte of the packet yet */
    COBS_BYTE,    /* one byte of the packet */
};

/** Takes one byte from the line. `*byte` is not 0. On COBS_BYTE, `*byte` has become the packet's byte; otherwise it is meaningless. */
/*@ requires \valid(cobs) && \valid(byte) && \separated(cobs, byte);
    assigns *cobs, *byte;
*/
static inline enum cobs_step cobs_take(struct cobs *cobs, uint8_t *byte)
{
    if (cobs->left != 0) {
        cobs->left--;
        return COBS_BYTE;
    }
    bool zero = cobs->zero_due;
    cobs->left = (uint8_t)(*byte - 1);
    cobs->zero_due = cobs->left != COBS_BLOCK;
    *byte = 0;
    return zero ? COBS_BYTE : COBS_NOTHING;
}

/** Whether a packet may end here: no block is unfinished. */
/*@ requires \valid_read(cobs);
    assigns \nothing;
*/
static inline bool cobs_complete(const struct cobs *cobs)
{
    return cobs->left == 0;
}

#endif
