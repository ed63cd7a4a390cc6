#include "cobs.h"

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
