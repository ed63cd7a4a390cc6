package dev.lampwright.cue;

import dev.lampwright.look.Look;

/**
 * What to put on, and how quickly.
 *
 * @param look the look
 * @param fadeSeconds how long the fade from the look before takes, in s; 0 cuts in at once
 */
public record Cue(Look look, double fadeSeconds) {}
