/**
 * Writes answers to the line: type, sequence, body, checksum, COBS and the ending zero.
 */
#ifndef ANSWER_H
#define ANSWER_H

#include <stdint.h>

#include "setup.h"

/** Most bytes of an answer's body: that of IN_FORCE. */
#define ANSWER_MOST SETUP_MOST

/** An answer in the making. */
struct answer {
    uint8_t length; /* bytes used: the place of the COBS code, type, sequence and the body so far */
    uint8_t bytes[1 + 2 + ANSWER_MOST + 2];
};

/** Begins an answer. */
void answer_begin(struct answer *answer, uint8_t type, uint8_t sequence);

/** Makes room for `count` more bytes of body, and answers where they go. The body keeps to ANSWER_MOST. */
uint8_t *answer_room(struct answer *answer, uint8_t count);

/** Appends one byte to the body. The body keeps to ANSWER_MOST. */
void answer_byte(struct answer *answer, uint8_t byte);

/** Appends a number of two bytes to the body. The body keeps to ANSWER_MOST. */
void answer_number(struct answer *answer, uint16_t number);

/** Appends the body of a good set-up; nothing else is in the answer's body. */
void answer_setup(struct answer *answer, const struct setup *setup);

/** Sends the answer through the port. The answer is used up. */
void answer_send(struct answer *answer);

#endif
