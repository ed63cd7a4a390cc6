/**
 * The handlers of interrupts, for the table of vectors. Each belongs to the file named beside it; the line that a build leaves
 * out has a handler that is never called.
 */
#ifndef INTERRUPTS_H
#define INTERRUPTS_H

void on_tick(void);  /* clock.c */
void on_alarm(void); /* clock.c */
void on_usb(void);   /* usb.c */
void on_uart(void);  /* uart.c */

#endif
