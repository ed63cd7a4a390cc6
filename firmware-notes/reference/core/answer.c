#include "answer.h"

#include "cobs.h"
#include "crc.h"
#include "number.h"
#include "port.h"

void answer_begin(struct answer *answer, uint8_t type, uint8_t sequence)
{
    answer->length = 1;
    answer_byte(answer, type);
    answer_byte(answer, sequence);
}

uint8_t *answer_room(struct answer *answer, uint8_t count)
{
    uint8_t *room = answer->bytes + answer->length;
    answer->length = (uint8_t)(answer->length + count);
    return room;
}

void answer_byte(struct answer *answer, uint8_t byte)
{
    *answer_room(answer, 1) = byte;
}

void answer_number(struct answer *answer, uint16_t number)
{
    number_write(answer_room(answer, 2), number);
}

void answer_setup(struct answer *answer, const struct setup *setup)
{
    uint8_t length = setup_write(setup, answer->bytes + answer->length);
    answer->length = (uint8_t)(answer->length + length);
}

void answer_send(struct answer *answer)
{
    uint16_t crc = CRC_START;
    for (uint8_t i = 1; i < answer->length; i++)
        crc = crc_next(crc, answer->bytes[i]);
    answer_byte(answer, (uint8_t)crc);
    answer_byte(answer, (uint8_t)(crc >> 8));
    cobs_encode(answer->bytes, (uint8_t)(answer->length - 1));
    for (uint8_t i = 0; i < answer->length; i++)
        port_send(answer->bytes[i]);
    port_send(0);
}
