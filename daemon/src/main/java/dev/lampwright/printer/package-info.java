/**
 * From the broker's messages to what the printer is doing: bindings turn messages into readings, readings make up an immutable
 * {@link dev.lampwright.printer.PrinterStatus}. The only place that imports the MQTT client and the JSON parser. Nothing here
 * knows of light.
 */
package dev.lampwright.printer;
