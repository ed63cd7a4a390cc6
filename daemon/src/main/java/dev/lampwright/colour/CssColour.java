package dev.lampwright.colour;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Colours as CSS writes them: names and hexadecimal. Source: CSS Color Module Level 4, sections 5.2 and 6.1. */
public final class CssColour {
    private static final Map<String, String> NAMED = named();

    private CssColour() {}

    /**
     * Reads a colour.
     *
     * @param text a CSS name, {@code #rgb} or {@code #rrggbb}; case does not count
     * @return the colour
     * @throws IllegalArgumentException if it is no such colour; the message says what would be
     */
    public static Light parse(String text) {
        String word = text.strip().toLowerCase(Locale.ROOT);
        String hex = NAMED.getOrDefault(word, word.startsWith("#") ? word.substring(1) : "");
        if (hex.length() == 3) {
            hex = hex.replaceAll("(.)", "$1$1");
        }
        if (hex.length() != 6 || !hex.chars().allMatch(HexFormat::isHexDigit)) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" is no CSS colour; write a name such as \"orange\" or \"#ff8000\"");
        }
        int value = HexFormat.fromHexDigits(hex);
        return new Light(channel(value >> 16), channel(value >> 8), channel(value));
    }

    private static float channel(int value) {
        return (float) Srgb.decode((value & 0xFF) / 255.0);
    }

    private static Map<String, String> named() {
        try (InputStream file = CssColour.class.getResourceAsStream("named.txt");
                BufferedReader reader = new BufferedReader(new InputStreamReader(file, StandardCharsets.US_ASCII))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> line.split(" ", 2))
                    .collect(Collectors.toUnmodifiableMap(pair -> pair[0], pair -> pair[1]));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
