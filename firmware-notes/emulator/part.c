#include "part.h"

#include <string.h>

avr_io_t *part_find(avr_t *avr, const char *kind)
{
    for (avr_io_t *io = avr->io_port; io != NULL; io = io->next)
        if (strcmp(io->kind, kind) == 0)
            return io;
    return NULL;
}
