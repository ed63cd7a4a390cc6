package dev.lampwright.tool.survey;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A state's words and codes match what the readings show the printer to be doing. */
final class MeaningEvidence implements Evidence {
    private static final double EACH = 1.8;
    /** The highest weight that it gives. */
    static final double MOST = 7.2;

    private static final double LEAST_S = 3;

    private final Doings doings;
    private final Map<Trail, List<Said>> said = new HashMap<>();

    /**
     * Prepares.
     *
     * @param doings what the printer did
     */
    MeaningEvidence(Doings doings) {
        this.doings = doings;
    }

    /** What a value reported, and what the printer did during that time. */
    List<Said> said(Trail trail) {
        return said.computeIfAbsent(trail, any -> Meanings.of(any.said(), doings));
    }

    @Override
    public Clue weigh(Trail trail, Role role) {
        if (role != Role.STATE) {
            return Clue.NONE;
        }
        List<Said> all = said(trail);
        long states =
                all.stream().filter(Said::certain).map(Said::state).distinct().count();
        boolean standstill = all.stream().anyMatch(one -> one.isStandstill() && one.clear() >= LEAST_S);
        long different = states + (standstill ? 1 : 0);
        return different < 2
                ? Clue.NONE
                : new Clue(
                        Math.min(MOST, EACH * (different - 1)),
                        (trail.numeric() ? "its codes" : "its words") + " go with what the readings do");
    }
}
