package dev.lampwright.toml;

/** Tables and arrays are too deep in each other. Reading ends here: what follows would be too deep as well, or be taken for something else. */
final class TooDeepException extends TomlException {
    private static final long serialVersionUID = 1L;

    TooDeepException(TomlMistake mistake) {
        super(mistake);
    }
}
