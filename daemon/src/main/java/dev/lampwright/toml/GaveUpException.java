package dev.lampwright.toml;

import java.util.List;

/** A value was left unfinished. Its mistake has been recorded, and the text is positioned at the next key or header. */
final class GaveUpException extends TomlException {
    private static final long serialVersionUID = 1L;
    private static final TomlMistake NOTED = new TomlMistake(0, 0, List.of(), "is noted", "");

    GaveUpException() {
        super(NOTED);
    }
}
