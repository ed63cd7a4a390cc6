#include "packet.h"

#include "limits.h"

/* Bytes of a packet outside the body: type, sequence and checksum. */
#define FIXED_BYTES 4

/*@ requires \valid(number);
    assigns *number;
*/
static void count_up(uint16_t *number, uint8_t by)
{
    *number = *number < UINT16_MAX - by ? (uint16_t)(*number + by) : UINT16_MAX;
}

void packet_start(struct packet_reader *reader)
{
    reader->cobs = (struct cobs){ 0, false };
    reader->length = 0;
    reader->came = 0;
    reader->early = 0;
    reader->over = false;
    reader->spoilt = false;
}

bool packet_under_way(const struct packet_reader *reader)
{
    return reader->came != 0 && !reader->over;
}

void packet_spoil(struct packet_reader *reader)
{
    if (reader->over)
        packet_start(reader);
    reader->spoilt = true;
}

/* The checksum is the only number sent low byte first. */
/*@ requires \valid_read(reader);
    assigns \nothing;
*/
static bool checksum_right(const struct packet_reader *reader)
{
    return reader->held[0] == reader->crc.low && reader->held[1] == reader->crc.high;
}

/*@ requires \valid_read(reader);
    assigns \nothing;
*/
static enum packet_event judge(const struct packet_reader *reader)
{
    if (reader->spoilt || reader->early < FIXED_BYTES || !checksum_right(reader) || !cobs_complete(&reader->cobs))
        return PACKET_BROKEN;
    return reader->length > PACKET_MOST - FIXED_BYTES ? PACKET_TOO_LONG : PACKET_GOOD;
}

/*@ requires \valid(reader);
    assigns reader->over;
    ensures \result.used == 1 && \result.body == 0;
*/
static struct packet_step take_end(struct packet_reader *reader)
{
    if (reader->came == 0 && !reader->spoilt)
        return (struct packet_step){ 1, 0, PACKET_NOTHING };
    reader->over = true;
    return (struct packet_step){ 1, 0, judge(reader) };
}

/* Keeps the newest byte. Returns the one that it shows not to be part of the checksum: the byte before the previous one. */
/*@ requires \valid(reader);
    assigns reader->held[0 .. 1];
*/
static uint8_t hold(struct packet_reader *reader, uint8_t byte)
{
    uint8_t passed = reader->held[0];
    reader->held[0] = reader->held[1];
    reader->held[1] = byte;
    return passed;
}

/*@ requires \valid(reader);
    assigns reader->type, reader->crc;
*/
static enum packet_event take_type(struct packet_reader *reader, uint8_t type)
{
    reader->type = type;
    reader->crc = crc_next(CRC_START, type);
    return PACKET_NOTHING;
}

/*@ requires \valid(reader);
    assigns reader->sequence, reader->crc;
*/
static enum packet_event take_sequence(struct packet_reader *reader, uint8_t sequence)
{
    reader->sequence = sequence;
    reader->crc = crc_next(reader->crc, sequence);
    return PACKET_BEGUN;
}

/* Processes one of the bytes before the body's first comes out. */
/*@ requires \valid(reader) && reader->early < FIXED_BYTES;
    assigns *reader;
    ensures \result.used == 1 && \result.body == 0;
*/
static struct packet_step take_early(struct packet_reader *reader, uint8_t byte)
{
    struct packet_step step = { 1, 0, PACKET_NOTHING };
    count_up(&reader->came, 1);
    if (cobs_take(&reader->cobs, &byte) == COBS_NOTHING)
        return step;
    uint8_t passed = hold(reader, byte);
    reader->early++;
    if (reader->early == 3)
        step.event = take_type(reader, passed);
    if (reader->early == 4)
        step.event = take_sequence(reader, passed);
    return step;
}

/* Processes bytes up to a zero. This loop must keep up with the line, so everything it works on is local. */
/*@ requires count >= 1 && bytes[0] != 0 && \valid(reader) && \valid(bytes + (0 .. count - 1));
    requires \separated(reader, bytes + (0 .. count - 1));
    assigns *reader, bytes[0 .. count - 1];
    ensures 1 <= \result.used <= count && \result.body <= \result.used;
*/
static struct packet_step take_body(struct packet_reader *reader, uint8_t *bytes, uint8_t count)
{
    struct cobs cobs = reader->cobs;
    struct crc crc = reader->crc;
    uint8_t older = reader->held[0];
    uint8_t newer = reader->held[1];
    const uint8_t *in = bytes;
    uint8_t *out = bytes;
    /*@ loop invariant 0 <= in - bytes <= \at(count, Pre) && 0 <= out - bytes <= in - bytes;
        loop invariant count == \at(count, Pre) - (in - bytes);
        loop invariant in == bytes + (in - bytes) && out == bytes + (out - bytes);
        loop invariant in == bytes ==> *in != 0;
        loop assigns in, out, count, cobs, crc, older, newer, bytes[0 .. \at(count, Pre) - 1];
        loop variant count;
    */
    for (; count > 0 && *in != 0; count--) {
        uint8_t byte = *in++;
        if (cobs_take(&cobs, &byte) == COBS_NOTHING)
            continue;
        crc = crc_next(crc, older);
        *out++ = older;
        older = newer;
        newer = byte;
    }
    reader->cobs = cobs;
    reader->crc = crc;
    reader->held[0] = older;
    reader->held[1] = newer;
    uint8_t used = (uint8_t)(in - bytes);
    uint8_t body = (uint8_t)(out - bytes);
    count_up(&reader->length, body);
    count_up(&reader->came, used);
    return (struct packet_step){ used, body, PACKET_NOTHING };
}

struct packet_step packet_take(struct packet_reader *reader, uint8_t *bytes, uint8_t count)
{
    if (reader->over)
        packet_start(reader);
    if (bytes[0] == 0)
        return take_end(reader);
    if (reader->early < FIXED_BYTES)
        return take_early(reader, bytes[0]);
    return take_body(reader, bytes, count);
}
