package dev.lampwright.config;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * On which line of a TOML text each key stands. A key path is the list of names from the outermost table on; an element of an
 * array, also of an array of tables, has its index, from 0, for a name.
 */
final class LineIndex {
    private final Map<List<String>, Integer> lines;
    private final Optional<Repeat> repeat;
    private final int tooDeepLine;

    /**
     * A key that is given twice.
     *
     * @param path the key
     * @param firstLine where it was given first
     * @param line where it was given again
     */
    record Repeat(List<String> path, int firstLine, int line) {}

    private LineIndex(LineScanner scanned) {
        lines = new HashMap<>(scanned.lines());
        repeat = scanned.repeat();
        tooDeepLine = scanned.tooDeepLine();
    }

    /**
     * Looks through a text.
     *
     * @param text any text; what it finds is exact for TOML 1.0 and a guess for anything else
     * @return where the keys are
     */
    static LineIndex of(String text) {
        LineScanner scanner = new LineScanner(text);
        scanner.scan();
        return new LineIndex(scanner);
    }

    /**
     * The line of a key.
     *
     * @param path the key's path
     * @return its line, from 1, or that of the innermost table around it that is there; 0 if there is none
     */
    int line(List<String> path) {
        for (int length = path.size(); length > 0; length--) {
            Integer line = lines.get(path.subList(0, length));
            if (line != null) {
                return line;
            }
        }
        return 0;
    }

    /**
     * The first key that is given twice.
     *
     * @return empty if there is none
     */
    Optional<Repeat> repeat() {
        return repeat;
    }

    /**
     * Where the text first nests deeper than {@link Toml#DEEPEST}.
     *
     * @return the line, from 1; 0 if it does so nowhere
     */
    int tooDeepLine() {
        return tooDeepLine;
    }
}
