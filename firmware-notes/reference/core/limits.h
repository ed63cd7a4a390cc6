/** What one board has room for. A port sets these at compile time; the values here are those of the ATmega328P. */
#ifndef LIMITS_H
#define LIMITS_H

/** Bytes of strip that the board can store: three per pixel, or four with white. 3 to 65000. */
#ifndef STORE_BYTES
#define STORE_BYTES 1200
#endif

/** Dimmers the board has. 1 to 12. */
#ifndef DIMMERS
#define DIMMERS 6
#endif

/** Time that the strip takes for one byte, in ns: eight bits of 1.25 us (WS2812B datasheet). */
#ifndef STRIP_BYTE_NS
#define STRIP_BYTE_NS 10000
#endif

/** Messages that may be unanswered at a time: what the board can receive while it works on one of them. 1 or more. */
#ifndef CREDITS
#define CREDITS 1
#endif

/** 1 if the board listens to the line while it drives the strip, else 0. */
#ifndef LISTENS
#define LISTENS 0
#endif

/** Data lines that the strip may be split over. 1 to 8. */
#ifndef OUTPUTS
#define OUTPUTS 1
#endif

/** Supplies that a set-up can name (wire.md section 3). */
#define SUPPLIES 4

/** Maximum channels of a pixel: red, green, blue, white. */
#define CHANNELS 4

/** Maximum packet length before COBS: a whole frame in one part, with its type, sequence, head and checksum. */
#define PACKET_MOST (2 + 3 + 2 * DIMMERS + STORE_BYTES + 2)

#endif
