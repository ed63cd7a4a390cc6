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
 * @param source where it is reported
 * @param unit the unit in which it is told; {@link Unit#OWN} if it is the role's own
 * @param scale what the number is multiplied by to be in that unit; 1 for the number as it is
 * @param words the words or codes that came, if it is told so
 * @param meanings the state that each of the words stands for, for those of which that is certain
 * @param doubts what is not sure about it, in words for the user
 * @param score how much speaks for it; what is below the least for its role is not told
 * @param reasons why, in words for the user
 */
public record Found(
        Role role,
        Source source,
        Unit unit,
        double scale,
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
