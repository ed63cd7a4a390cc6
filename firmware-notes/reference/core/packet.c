#include "packet.h"

#include "crc.h"
#include "limits.h"

/* Bytes of a packet that are no body: type, sequence and checksum. */
#define FIXED_BYTES 4

static void count(uint16_t *number)
{
    if (*number != UINT16_MAX)
        ++*number;
}

static uint16_t clip(uint32_t number)
{
    return number < UINT16_MAX ? (uint16_t)number : UINT16_MAX;
}

void packet_start(struct packet_reader *reader)
{
    reader->cobs.left = 0;
    reader->cobs.zero_due = false;
    reader->crc = CRC_START;
    reader->early = 0;
    reader->silent = 0;
    reader->length = 0;
    reader->spoilt = false;
}

bool packet_under_way(const struct packet_reader *reader)
{
    return reader->silent != 0;
}

void packet_spoil(struct packet_reader *reader)
{
    reader->spoilt = true;
}

static enum packet_event judge(const struct packet_reader *reader)
{
    if (reader->spoilt || reader->early < FIXED_BYTES || reader->crc != 0 || !cobs_complete(&reader->cobs))
        return PACKET_BROKEN;
    return reader->length > PACKET_MOST - FIXED_BYTES ? PACKET_TOO_LONG : PACKET_GOOD;
}

static enum packet_event finish(struct packet_reader *reader)
{
    if (!packet_under_way(reader))
        return PACKET_NOTHING;
    enum packet_event event = judge(reader);
    reader->body = reader->length;
    reader->came = clip((uint32_t)reader->length + reader->early + reader->silent);
    packet_start(reader);
    return event;
}

/* Takes one of the first four bytes: type and sequence are known once the held bytes move on. */
static enum packet_event take_early(struct packet_reader *reader)
{
    reader->early++;
    if (reader->early == 3)
        reader->type = reader->byte;
    if (reader->early < FIXED_BYTES)
        return PACKET_NOTHING;
    reader->sequence = reader->byte;
    return PACKET_BEGUN;
}

enum packet_event packet_take(struct packet_reader *reader, uint8_t byte)
{
    if (byte == 0)
        return finish(reader);
    if (cobs_take(&reader->cobs, &byte) == COBS_NOTHING) {
        count(&reader->silent);
        return PACKET_NOTHING;
    }
    reader->crc = crc_next(reader->crc, byte);
    reader->byte = reader->held[0];
    reader->held[0] = reader->held[1];
    reader->held[1] = byte;
    if (reader->early < FIXED_BYTES)
        return take_early(reader);
    count(&reader->length);
    return PACKET_BODY;
}
