package dev.lampwright.payload;

import java.util.Optional;

/** Extracts the wanted part of a text. Two cuts are equal if they always give the same result. */
public sealed interface Cut permits CsvField, Excerpt {
    /**
     * Extracts the part.
     *
     * @param text any text
     * @return the part; empty if there is none
     * @throws UnreadableException if the text is not suitable
     */
    Optional<String> from(String text) throws UnreadableException;
}
