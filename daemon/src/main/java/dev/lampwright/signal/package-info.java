/**
 * Numbers that light can follow: from readings, which come once or twice a second, to signals that move without steps. Start with
 * {@code Signal}, which has the table of all; {@code Sources} takes in what is new in a status and moves {@code Track}s, and
 * {@code Signals} asks them at every frame. {@code Heater} and {@code Job} are the two large sources; their calculations are in separate
 * classes, of which {@code ReadyTime} is the largest. Unknown is unknown, not zero. Time is passed in.
 */
package dev.lampwright.signal;
