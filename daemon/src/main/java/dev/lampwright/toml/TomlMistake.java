package dev.lampwright.toml;

import java.util.List;

/**
 * One place where a text is not valid TOML.
 *
 * @param line line of the text, from 1
 * @param column column of that line, from 1; 0 if the mistake concerns a whole line
 * @param key path of the key that it concerns; empty if it concerns none
 * @param what what is wrong, to follow the key or the column: {@code is given on line 3 already}
 * @param whatWouldBeRight what to do: {@code keep one of the two}
 */
public record TomlMistake(int line, int column, List<String> key, String what, String whatWouldBeRight) {
    /** Keeps a copy of the key. */
    public TomlMistake {
        key = List.copyOf(key);
    }
}
