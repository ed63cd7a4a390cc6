package dev.lampwright.look;

/**
 * A part of a look that could not be drawn. It stays dark from then on; the rest of the look continues.
 *
 * @param look name of the look
 * @param part which part, as the configuration counts: {@code layers.0} is the lowest layer, {@code dimmers.0} the first dimmer in use
 * @param why what happened
 */
public record LookFault(String look, String part, String why) {}
