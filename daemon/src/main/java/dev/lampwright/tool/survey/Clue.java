package dev.lampwright.tool.survey;

/**
 * What one piece of evidence says.
 *
 * @param weight how much it speaks for, or below 0 against; about 1 is a hint, 3 is strong
 * @param reason why, in words for the user; empty if it is not worth telling
 */
record Clue(double weight, String reason) {
    /** Says nothing. */
    static final Clue NONE = new Clue(0, "");

    /**
     * Speaks against.
     *
     * @param weight how much, above 0
     * @return the clue
     */
    static Clue against(double weight) {
        return new Clue(-weight, "");
    }
}
