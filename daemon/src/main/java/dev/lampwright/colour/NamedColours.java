package dev.lampwright.colour;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The named colours of CSS. Source: CSS Color Module Level 4, "Named Colors". */
final class NamedColours {
    private static final Map<String, String> DIGITS = read();

    private NamedColours() {}

    /**
     * Finds a colour.
     *
     * @param name in lower case
     * @return the colour, if there is one with that name
     */
    static Optional<Colour> find(String name) {
        return Optional.ofNullable(DIGITS.get(name)).flatMap(HexColour::of);
    }

    private static Map<String, String> read() {
        try (InputStream file = NamedColours.class.getResourceAsStream("named.txt");
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
