#include "flash.h"

#include "rp2040.h"

/* Read Unique ID of the usual flash chips: the command, four dummy bytes, then the number. */
#define READ_UNIQUE_ID 0x4B
#define SILENT_BYTES 4
#define TALK_BYTES (1 + SILENT_BYTES + PORT_ID_BYTES)

/* 128 MHz / 16: slow enough for any chip. Frames of eight bits, both directions at once (datasheet 4.10.13). */
#define DIVISOR 16
#define FRAME_8_BITS (7u << 16)

/* Everything to send fits the 16-word queue, so it can be written before any of it is read. */
_Static_assert(TALK_BYTES <= 16, "the queue is too short");

static void open_bus(void)
{
    SSI_SSIENR = 0;
    SSI_BAUDR = DIVISOR;
    SSI_CTRLR0 = FRAME_8_BITS;
    SSI_SER = 1;
    SSI_SSIENR = 1;
}

static uint8_t exchanged(void)
{
    while (SSI_RXFLR == 0) {
    }
    return (uint8_t)SSI_DR0;
}

void flash_id(uint8_t id[PORT_ID_BYTES])
{
    uint8_t all = UINT8_MAX;
    uint8_t any = 0;
    open_bus();
    QSPI_SS_CTRL = OVERRIDE_LOW;
    for (uint8_t i = 0; i < TALK_BYTES; i++)
        SSI_DR0 = i == 0 ? READ_UNIQUE_ID : 0;
    for (uint8_t i = 0; i < 1 + SILENT_BYTES; i++)
        exchanged();
    for (uint8_t i = 0; i < PORT_ID_BYTES; i++) {
        id[i] = exchanged();
        all &= id[i];
        any |= id[i];
    }
    QSPI_SS_CTRL = OVERRIDE_HIGH;
    if (all == UINT8_MAX || any == 0)
        for (uint8_t i = 0; i < PORT_ID_BYTES; i++)
            id[i] = 0;
}
