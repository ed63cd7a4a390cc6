package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A state is reported in few words, and most of them are typical of states. */
final class WordsEvidence implements Evidence {
    private static final int MANY = 2;

    /** A text with several numbers and equals signs is better split up. */
    private static boolean isManyValues(String word) {
        return word.chars().filter(c -> c == '*').count() >= MANY
                && word.chars().filter(c -> c == '=' || c == ':').count() >= MANY;
    }

    @Override
    public Clue weigh(Trail trail, Role role) {
        if (role != Role.STATE || trail.numeric()) {
            return Clue.NONE;
        }
        StateWords words = StateWords.of(trail.words());
        List<String> seen = new ArrayList<>();
        for (Map.Entry<PrinterState, List<String>> entry : words.known().entrySet()) {
            seen.add("“" + entry.getValue().get(0) + "” for " + entry.getKey().word());
        }
        if (seen.isEmpty()) {
            return Clue.against(1);
        }
        if (trail.words().stream().allMatch(WordsEvidence::isManyValues)) {
            return Clue.NONE;
        }
        int unknown = words.unknown().size();
        double share = (double) words.count() / (words.count() + unknown);
        double weight = 4 * share - 1 + Math.min(2, 0.5 * (seen.size() - 1)) - (trail.hasMoreWords() ? 3 : 0);
        return new Clue(weight, "has words such as " + String.join(", ", seen));
    }
}
