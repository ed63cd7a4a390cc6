package dev.lampwright.toml;

/** Tables and arrays are nested too deeply. Reading ends here: what follows would be too deep as well, or be misread. */
final class TooDeepException extends TomlException {
    private static final long serialVersionUID = 1L;

    TooDeepException(TomlMistake mistake) {
        super(mistake);
    }
}
