package dev.lampwright.tool.survey;

/** One kind of evidence of what a value may be. */
interface Evidence {
    /**
     * Weighs.
     *
     * @param trail what was seen of the value
     * @param role what it may be
     * @return what this says to it; {@link Clue#NONE} where it cannot tell
     */
    Clue weigh(Trail trail, Role role);
}
