package dev.lampwright.config;

/**
 * A ready-made look that comes with Lampwright.
 *
 * @param name its name, which a cue, a look in a file or an ask can use
 * @param use what it suits, one word: {@code calm}, {@code work}, {@code progress}, {@code heat}, {@code standby}, {@code held},
 *     {@code done}, {@code fault} or {@code night}
 * @param sentence what it looks like
 * @param toml its text, as it can be written in a file: {@code [looks.NAME]} and its keys
 */
public record Swatch(String name, String use, String sentence, String toml) {}
