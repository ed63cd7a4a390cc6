package dev.lampwright.tool.survey;

/** A state's words go with what the readings show that the printer does. */
final class MeaningEvidence implements Evidence {
    private static final double EACH = 1.8;
    private static final double MOST = 5.4;

    private final HeardPhases doings;

    /**
     * Prepares.
     *
     * @param doings what the printer did
     */
    MeaningEvidence(HeardPhases doings) {
        this.doings = doings;
    }

    @Override
    public Clue weigh(Trail trail, Role role) {
        if (role != Role.STATE || trail.numeric()) {
            return Clue.NONE;
        }
        long states = doings.meanings(trail).values().stream().distinct().count();
        return states < 2
                ? Clue.NONE
                : new Clue(Math.min(MOST, EACH * (states - 1)), "its words go with what the readings do");
    }
}
