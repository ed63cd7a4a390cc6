/**
 * The wire, host side, as {@code firmware-notes/wire.md} writes it down: framing, checksum, messages and the current formula that
 * host and controller share. Pure Java without a dependency; no I/O, no threads, and nothing allocated for a frame.
 */
package dev.lampwright.protocol;
