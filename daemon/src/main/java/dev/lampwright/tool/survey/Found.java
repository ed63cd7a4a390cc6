package dev.lampwright.tool.survey;

import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Map;

/**
 * One value whose role is known.
 *
 * @param role what it is
 * @param source where it is told
 * @param unit the unit in which it is told; {@link Unit#OWN} if it is the role's own
 * @param words the words that came, if it is told in words
 * @param meanings what the printer did while it said a word, for those of which that is known
 * @param doubts what is not sure about it, in words for the user
 * @param score how much speaks for it; what is below the least for its role is not told
 * @param reasons why, in words for the user
 */
public record Found(
        Role role,
        Source source,
        Unit unit,
        List<String> words,
        Map<String, PrinterState> meanings,
        List<String> doubts,
        double score,
        List<String> reasons) {
    /** Keeps copies. */
    public Found {
        words = List.copyOf(words);
        meanings = Map.copyOf(meanings);
        doubts = List.copyOf(doubts);
        reasons = List.copyOf(reasons);
    }
}
