package dev.lampwright.payload;

import java.util.Optional;

/** Cuts the wanted part out of a text. Two cuts are equal if they always cut alike. */
public sealed interface Cut permits CsvField, Excerpt {
    /**
     * Cuts.
     *
     * @param text any text
     * @return the part; empty if it is not there
     * @throws UnreadableException if the text is not fit for it
     */
    Optional<String> from(String text) throws UnreadableException;
}
