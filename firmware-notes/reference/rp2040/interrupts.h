/**
 * The interrupt handlers for the vector table. Each belongs to the file named next to it; in a build without that line, the handler is
 * never called.
 */
#ifndef INTERRUPTS_H
#define INTERRUPTS_H

void on_tick(void);  /* clock.c */
void on_alarm(void); /* clock.c */
void on_usb(void);   /* usb.c */
void on_uart(void);  /* uart.c */

#endif
