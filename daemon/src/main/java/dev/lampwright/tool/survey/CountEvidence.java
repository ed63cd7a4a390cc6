package dev.lampwright.tool.survey;

/** Layers are counted in whole numbers. */
final class CountEvidence implements Evidence {
    @Override
    public Clue weigh(Trail trail, Role role) {
        boolean counts = role == Role.DONE || role == Role.TOTAL;
        return counts && trail.numeric() && !trail.whole() ? Clue.against(4) : Clue.NONE;
    }
}
