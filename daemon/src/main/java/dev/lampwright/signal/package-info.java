/**
 * Numbers that light can follow: from readings, which come once or twice a second, to signals between 0 and 1 that move without a
 * step. Unknown is unknown, not zero. Time is handed in.
 */
package dev.lampwright.signal;
