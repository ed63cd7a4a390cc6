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
 * @param unit the unit in which it is reported; {@link Unit#OWN} if it is the role's own
 * @param scale factor that converts the number to that unit; 1 to keep it unchanged
 * @param words the words or codes that came, if it is reported in words
 * @param meanings the state that each of the words stands for, where that is certain
 * @param doubts what is uncertain, worded for the user
 * @param score the evidence for it; a value below its role's minimum is not reported
 * @param reasons why, worded for the user
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
