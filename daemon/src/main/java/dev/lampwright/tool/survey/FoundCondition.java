package dev.lampwright.tool.survey;

import dev.lampwright.payload.Source;
import dev.lampwright.payload.WordPattern;
import dev.lampwright.printer.PrinterState;
import java.util.List;

/**
 * A flag, a code or a text that shows a state by itself.
 *
 * @param state the state
 * @param source where it is
 * @param is words of which one must appear; empty for any
 * @param not words that must not be there
 * @param reasons why, worded for the user
 */
public record FoundCondition(
        PrinterState state, Source source, List<String> is, List<String> not, List<String> reasons) {
    /** Whether the word at the place meets it. */
    boolean isMetBy(String word) {
        boolean some = !word.isBlank() && !word.equals("null");
        return some
                && (is.isEmpty() || is.stream().anyMatch(one -> new WordPattern(one).matches(word)))
                && not.stream().noneMatch(one -> new WordPattern(one).matches(word));
    }

    /** Keeps copies of the lists. */
    public FoundCondition {
        is = List.copyOf(is);
        not = List.copyOf(not);
        reasons = List.copyOf(reasons);
    }
}
