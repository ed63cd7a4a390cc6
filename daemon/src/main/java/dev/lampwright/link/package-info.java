/**
 * The controller at the far end of the serial line: handshake, credit, reconnect, and the slot where the newest frame wins. The
 * only place that imports the serial library. Nothing here knows what a frame shows.
 */
package dev.lampwright.link;
