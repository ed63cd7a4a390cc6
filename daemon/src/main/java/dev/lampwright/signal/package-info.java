/**
 * Numbers that light can follow: from readings, which come once or twice a second, to signals that move without a step. {@code Signals}
 * has {@code SignalSource}s, which take in what is new in a status, and gives {@code Track}s, which are asked at every frame. Unknown is
 * unknown, not zero. Time is handed in.
 */
package dev.lampwright.signal;
