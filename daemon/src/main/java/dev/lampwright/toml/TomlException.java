package dev.lampwright.toml;

/** Carries one mistake from where it is found to where reading can continue. Has no stack trace, because one text may have many. */
class TomlException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient TomlMistake mistake;

    TomlException(TomlMistake mistake) {
        super(mistake.what(), null, false, false);
        this.mistake = mistake;
    }

    TomlMistake mistake() {
        return mistake;
    }
}
