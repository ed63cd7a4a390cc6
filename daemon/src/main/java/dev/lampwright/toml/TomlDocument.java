package dev.lampwright.toml;

import java.util.List;
import java.util.Map;

/**
 * The result of reading a text: values, the line of each key, and what is wrong. A key path is the list of names from the outermost table
 * on; an element of an array, or of an array of tables, has its index, from 0, as a name.
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
     * {@code Long} or a {@code BigInteger}, the first that can hold it; any other number is a {@code BigDecimal}, or a {@code Double} if it
     * is infinite or NaN; dates and times are those of {@code java.time}; the rest is {@code String} and {@code Boolean}.
     *
     * @return the outermost table; as far as it could be read if there are mistakes
     */
    public Map<String, Object> values() {
        return tree.root();
    }

    /**
     * The line of a key.
     *
     * @param path the key's path
     * @return its line, from 1, or that of the innermost existing table around it; 0 if there is none
     */
    public int line(List<String> path) {
        return tree.line(path);
    }

    /**
     * All places where the text is not valid TOML.
     *
     * @return in the order of the text; empty if it is valid
     */
    public List<TomlMistake> mistakes() {
        return mistakes;
    }
}
