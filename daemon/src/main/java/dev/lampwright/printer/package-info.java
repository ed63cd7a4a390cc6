/**
 * What the printer is doing: bindings turn values from messages into readings, and readings make up an immutable
 * {@link dev.lampwright.printer.PrinterStatus} with the state that follows from them. Nothing here knows about light.
 */
package dev.lampwright.printer;
