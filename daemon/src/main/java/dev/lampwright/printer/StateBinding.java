package dev.lampwright.printer;

import dev.lampwright.payload.Source;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Where the printer says what it is doing, and in what words.
 *
 * @param source where the word is told
 * @param words the words for each state; {@code *} stands for any characters, case does not count. The first state with a word
 *     that matches wins, in the order in which the file names them
 */
public record StateBinding(Source source, Map<PrinterState, List<String>> words) {
    /** Keeps a copy of the map, in its order. */
    public StateBinding {
        words = Collections.unmodifiableMap(new LinkedHashMap<>(words));
    }
}
