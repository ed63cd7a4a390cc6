/**
 * A job drawn again: from a recording, from handwritten lines, or an invented one that moves every signal. Uses the same chain as the
 * daemon, so it gives the same bytes.
 */
package dev.lampwright.tool.replay;
