package dev.lampwright.tool.picture;

import dev.lampwright.look.Fitting;

/**
 * What a picture is taken of.
 *
 * @param title what the picture is called, in a few words
 * @param note what else is to be known of it, in a few words; may be empty
 * @param fitting the strip, its zones and its dimmers
 * @param order the strip's order of channels
 */
public record Subject(String title, String note, Fitting fitting, String order) {}
