/**
 * Writes answers to the line: type, sequence, body, checksum, COBS and the ending zero. Each COBS block goes out as soon as it
 * is whole, so that the line is busy while the rest is calculated.
 */
#ifndef ANSWER_H
#define ANSWER_H

#include <stdint.h>

#include "crc.h"
#include "setup.h"

/** Most bytes of an answer's body: that of IN_FORCE. With type, sequence and checksum it fits one block of COBS. */
#define ANSWER_MOST SETUP_MOST

/** Most bytes of the one block. */
#define ANSWER_BLOCK (2 + ANSWER_MOST + 2)

/** An answer in the making. */
struct answer {
    struct crc crc;  /* of type, sequence and the body so far */
    uint8_t waiting; /* bytes of the block that is not whole yet */
    uint8_t block[ANSWER_BLOCK];
};

/** Begins an answer. */
/*@ requires \valid(answer);
    assigns *answer;
    ensures answer->waiting <= 2;
*/
void answer_begin(struct answer *answer, uint8_t type, uint8_t sequence);

/** Appends one byte to the body. The body keeps to ANSWER_MOST. */
/*@ requires \valid(answer) && answer->waiting < ANSWER_BLOCK;
    assigns *answer;
    ensures answer->waiting <= \old(answer->waiting) + 1;
*/
void answer_byte(struct answer *answer, uint8_t byte);

/** Appends `count` bytes to the body. The body keeps to ANSWER_MOST. */
/*@ requires \valid(answer) && answer->waiting + count <= ANSWER_BLOCK;
    requires \valid_read(bytes + (0 .. count - 1)) && \separated(answer, bytes + (0 .. count - 1));
    assigns *answer;
    ensures answer->waiting <= \old(answer->waiting) + count;
*/
void answer_bytes(struct answer *answer, const uint8_t *bytes, uint8_t count);

/** Appends a number of two bytes to the body. The body keeps to ANSWER_MOST. */
/*@ requires \valid(answer) && answer->waiting + 2 <= ANSWER_BLOCK;
    assigns *answer;
    ensures answer->waiting <= \old(answer->waiting) + 2;
*/
void answer_number(struct answer *answer, uint16_t number);

/** Ends the answer with its checksum. It is used up. */
/*@ requires \valid(answer) && answer->waiting + 2 <= ANSWER_BLOCK;
    assigns *answer;
*/
void answer_end(struct answer *answer);

#endif
