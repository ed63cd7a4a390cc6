/**
 * A job drawn again: from a recording, from lines written by hand, or an invented one that moves every signal. The same chain as the
 * daemon runs gives the same bytes.
 */
package dev.lampwright.tool.replay;
