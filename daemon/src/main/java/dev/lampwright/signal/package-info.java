/**
 * Numbers that light can follow: from readings, which come once or twice a second, to signals that move without a step. Begin with
 * {@code Signal}, which has the table of all; {@code Sources} takes in what is new in a status and moves {@code Track}s, and {@code
 * Signals} asks them at every frame. {@code Heater} and {@code Job} are the two large sources; what they calculate with is in classes of
 * its own, {@code ReadyTime} the longest way. Unknown is unknown, not zero. Time is handed in.
 */
package dev.lampwright.signal;
