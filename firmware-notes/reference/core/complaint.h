/**
 * What a controller finds wrong with a message (wire.md section 3, COMPLAINT).
 */
#ifndef COMPLAINT_H
#define COMPLAINT_H

#include <stdint.h>

/** The codes, each with the meaning of its detail. */
enum complaint_code {
    COMPLAINT_NONE = 0,
    COMPLAINT_BROKEN = 1,       /* bytes received, without the zero */
    COMPLAINT_TOO_LONG = 2,     /* maximum packet length */
    COMPLAINT_TYPE = 3,         /* the type */
    COMPLAINT_VERSION = 4,      /* the version that is supported */
    COMPLAINT_NOT_SET_UP = 5,   /* 0 */
    COMPLAINT_LENGTH = 6,       /* the correct length; for FRAME, the strip bytes still to come */
    COMPLAINT_VALUE = 7,        /* offset of the field in the body */
    COMPLAINT_ORDER = 8,        /* the correct offset */
    COMPLAINT_DARK_CURRENT = 9, /* current of the dark strip in mA, rounded up */
};

/** A complaint; COMPLAINT_NONE means that there is nothing to complain about. */
struct complaint {
    uint8_t code;
    uint16_t detail;
};

/** A complaint of `code` with `detail`. */
/*@ assigns \nothing;
    ensures \result.code == (uint8_t)code && \result.detail == detail;
*/
static inline struct complaint complain(enum complaint_code code, uint16_t detail)
{
    return (struct complaint){ (uint8_t)code, detail };
}

/** No complaint. */
/*@ assigns \nothing;
    ensures \result.code == COMPLAINT_NONE;
*/
static inline struct complaint content(void)
{
    return complain(COMPLAINT_NONE, 0);
}

#endif
