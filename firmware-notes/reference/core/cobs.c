#include "cobs.h"

enum cobs_step cobs_take(struct cobs *cobs, uint8_t *byte)
{
    if (cobs->left != 0) {
        cobs->left--;
        return COBS_BYTE;
    }
    bool zero = cobs->zero_due;
    cobs->left = (uint8_t)(*byte - 1);
    cobs->zero_due = cobs->left != COBS_BLOCK;
    if (!zero)
        return COBS_NOTHING;
    *byte = 0;
    return COBS_BYTE;
}

bool cobs_complete(const struct cobs *cobs)
{
    return cobs->left == 0;
}

void cobs_encode(uint8_t *bytes, uint8_t length)
{
    uint8_t code = 1;
    for (uint8_t at = length; at > 0; at--) {
        if (bytes[at] != 0) {
            code++;
        } else {
            bytes[at] = code;
            code = 1;
        }
    }
    bytes[0] = code;
}
