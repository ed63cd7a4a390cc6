package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.List;

/**
 * What all evidence together says.
 *
 * @param score the sum of the weights
 * @param reasons the evidence for it, worded for the user
 */
record Judgement(double score, List<String> reasons) {
    /** Nothing printed yet. */
    static final Judgement OPEN = new Judgement(0, List.of());

    /** This with one more clue. */
    Judgement with(Clue clue) {
        return new Judgement(
                score + clue.weight(), clue.weight() > 0 ? joined(reasons, List.of(clue.reason())) : reasons);
    }

    /** This and another together. */
    Judgement and(Judgement other) {
        return new Judgement(score + other.score, joined(reasons, other.reasons));
    }

    private static List<String> joined(List<String> some, List<String> more) {
        List<String> all = new ArrayList<>(some);
        more.stream()
                .filter(reason -> !reason.isEmpty() && !all.contains(reason))
                .forEach(all::add);
        return List.copyOf(all);
    }
}
