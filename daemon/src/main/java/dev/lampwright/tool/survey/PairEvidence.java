package dev.lampwright.tool.survey;

/** One kind of evidence that one value is a temperature and another its target. */
sealed interface PairEvidence permits SiblingEvidence, FollowEvidence, CountUpEvidence {
    /**
     * Weighs a pair.
     *
     * @param actual what was seen of the one
     * @param target what was seen of the other
     * @return the evidence
     */
    Clue weigh(Trail actual, Trail target);
}
