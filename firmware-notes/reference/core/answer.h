/**
 * Writes answers to the line: type, sequence, body, checksum, COBS and the ending zero. Each COBS block is sent as soon as it is complete,
 * so that the line is busy while the rest is calculated.
 */
#ifndef ANSWER_H
#define ANSWER_H

#include <stdint.h>

#include "crc.h"
#include "setup.h"

/** Maximum length of an answer's body: that of IN_FORCE. With type, sequence and checksum it fits one COBS block. */
#define ANSWER_MOST SETUP_MOST

/** Maximum length of the one block. */
#define ANSWER_BLOCK (2 + ANSWER_MOST + 2)

/** An answer under construction. */
struct answer {
    struct crc crc;  /* of type, sequence and the body so far */
    uint8_t waiting; /* bytes of the block that is not complete yet */
    uint8_t block[ANSWER_BLOCK];
};

/** Begins an answer. */
/*@ requires \valid(answer);
    assigns *answer;
    ensures answer->waiting <= 2;
*/
void answer_begin(struct answer *answer, uint8_t type, uint8_t sequence);

/** Appends one byte to the body, which must not exceed ANSWER_MOST. */
/*@ requires \valid(answer) && answer->waiting < ANSWER_BLOCK;
    assigns *answer;
    ensures answer->waiting <= \old(answer->waiting) + 1;
*/
void answer_byte(struct answer *answer, uint8_t byte);

/** Appends `count` bytes to the body, which must not exceed ANSWER_MOST. */
/*@ requires \valid(answer) && answer->waiting + count <= ANSWER_BLOCK;
    requires \valid_read(bytes + (0 .. count - 1)) && \separated(answer, bytes + (0 .. count - 1));
    assigns *answer;
    ensures answer->waiting <= \old(answer->waiting) + count;
*/
void answer_bytes(struct answer *answer, const uint8_t *bytes, uint8_t count);

/** Appends a two-byte number to the body, which must not exceed ANSWER_MOST. */
/*@ requires \valid(answer) && answer->waiting + 2 <= ANSWER_BLOCK;
    assigns *answer;
    ensures answer->waiting <= \old(answer->waiting) + 2;
*/
void answer_number(struct answer *answer, uint16_t number);

/** Ends the answer with its checksum. The answer cannot be used afterwards. */
/*@ requires \valid(answer) && answer->waiting + 2 <= ANSWER_BLOCK;
    assigns *answer;
*/
void answer_end(struct answer *answer);

#endif
