package dev.lampwright.toml;

import java.util.List;
import java.util.Map;

/**
 * What was read from a text: values, the line of each key, and what is wrong. A key path is the list of names from the outermost
 * table on; an element of an array, also of an array of tables, has its index, from 0, for a name.
 */
public final class TomlDocument {
    private final TomlTree tree;
    private final List<TomlMistake> mistakes;

    TomlDocument(TomlTree tree, List<TomlMistake> mistakes) {
        this.tree = tree;
        this.mistakes = List.copyOf(mistakes);
    }

    /**
     * The values. A table is a {@code Map} in the order of the text, an array a {@code List}; a whole number is an {@code Integer}, a
     * {@code Long} or a {@code BigInteger}, whichever is the first that holds it; any other number is a {@code BigDecimal}, or a {@code Double} if
     * it is infinite or none; dates and times are those of {@code java.time}; the rest is {@code String} and {@code Boolean}.
     *
     * @return the outermost table; what could be read of it if there are mistakes
     */
    public Map<String, Object> values() {
        return tree.root();
    }

    /**
     * The line of a key.
     *
     * @param path the key's path
     * @return its line, from 1, or that of the innermost table around it that is there; 0 if there is none
     */
    public int line(List<String> path) {
        return tree.line(path);
    }

    /**
     * Everywhere that the text is not valid TOML.
     *
     * @return in the order of the text; empty if it is valid
     */
    public List<TomlMistake> mistakes() {
        return mistakes;
    }
}
