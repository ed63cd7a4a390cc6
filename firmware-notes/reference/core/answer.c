#include "answer.h"

#include "port.h"

/* Sends the block: its code and its bytes. Most are short. */
/*@ requires \valid(answer) && answer->waiting <= ANSWER_BLOCK;
    assigns answer->waiting;
    ensures answer->waiting == 0;
*/
static void send_block(struct answer *answer)
{
    port_send((uint8_t)(answer->waiting + 1));
    /*@ loop invariant 0 <= i <= answer->waiting;
        loop assigns i;
        loop variant answer->waiting - i;
    */
    for (uint8_t i = 0; i < answer->waiting; i++)
        port_send(answer->block[i]);
    answer->waiting = 0;
}

/* A zero is not sent: the end of its block stands for it. */
/*@ requires \valid(answer) && answer->waiting < ANSWER_BLOCK;
    assigns answer->waiting, answer->block[0 .. ANSWER_BLOCK - 1];
    ensures answer->waiting <= \old(answer->waiting) + 1;
*/
static void stuff(struct answer *answer, uint8_t byte)
{
    if (byte == 0)
        send_block(answer);
    else
        answer->block[answer->waiting++] = byte;
}

void answer_begin(struct answer *answer, uint8_t type, uint8_t sequence)
{
    answer->crc = CRC_START;
    answer->waiting = 0;
    answer_byte(answer, type);
    answer_byte(answer, sequence);
}

void answer_byte(struct answer *answer, uint8_t byte)
{
    answer->crc = crc_next(answer->crc, byte);
    stuff(answer, byte);
}

void answer_bytes(struct answer *answer, const uint8_t *bytes, uint8_t count)
{
    /*@ loop invariant 0 <= i <= count && answer->waiting <= \at(answer->waiting, Pre) + i;
        loop assigns i, *answer;
        loop variant count - i;
    */
    for (uint8_t i = 0; i < count; i++)
        answer_byte(answer, bytes[i]);
}

void answer_number(struct answer *answer, uint16_t number)
{
    answer_byte(answer, (uint8_t)(number >> 8));
    answer_byte(answer, (uint8_t)number);
}

void answer_end(struct answer *answer)
{
    struct crc crc = answer->crc;
    stuff(answer, crc.low);
    stuff(answer, crc.high);
    send_block(answer);
    port_send(0);
}
