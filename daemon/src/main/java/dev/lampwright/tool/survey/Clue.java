package dev.lampwright.tool.survey;

/**
 * What one piece of evidence says.
 *
 * @param weight the evidence for it, or against it if below 0; about 1 is a hint, 3 is strong
 * @param reason why, worded for the user; empty if not worth showing
 */
record Clue(double weight, String reason) {
    /** Does nothing. */
    static final Clue NONE = new Clue(0, "");

    /**
     * Evidence against.
     *
     * @param weight how much, above 0
     * @return the clue
     */
    static Clue against(double weight) {
        return new Clue(-weight, "");
    }
}
