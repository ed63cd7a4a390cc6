/**
 * The wire, host side, as {@code firmware-notes/wire.md} writes it down: framing, checksum, messages and the current formula that
 * host and controller share. Begin with {@code MessageWriter} and {@code MessageReader}, which turn messages into packets and back;
 * {@code Setup}, {@code Here}, {@code Shown} and {@code Complaint} are what messages say, {@code SupplyDraw} is the formula. Pure Java
 * without a dependency; no I/O, no threads, and nothing allocated for a frame.
 */
package dev.lampwright.protocol;
