#ifndef LAMPWRIGHT_PART_H
#define LAMPWRIGHT_PART_H

#include <sim_avr.h>

/* The simulator's module of that kind ("uart", "extint"), or NULL. */
avr_io_t *part_find(avr_t *avr, const char *kind);

#endif
