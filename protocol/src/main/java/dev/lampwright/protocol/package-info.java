/**
 * The wire, host side, as defined in {@code firmware-notes/wire.md}: framing, checksum, messages and the current formula that host and
 * controller share. Start with {@code MessageWriter} and {@code MessageReader}, which turn messages into packets and back; {@code Setup},
 * {@code Here}, {@code Shown} and {@code Complaint} are the contents of messages, {@code SupplyDraw} is the formula. Pure Java without
 * dependencies; no I/O, no threads, and nothing allocated for a frame.
 */
package dev.lampwright.protocol;
