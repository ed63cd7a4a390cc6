package dev.lampwright.tool.fit;

import java.util.OptionalInt;

/**
 * The live page of a new file.
 *
 * @param port its port; empty for the usual one
 * @param forOthers whether it is for browsers on other computers too, with tokens: the person who fits uses one
 */
record NewPage(OptionalInt port, boolean forOthers) {
    /** At the usual port, for browsers on this computer alone. */
    static final NewPage USUAL = new NewPage(OptionalInt.empty(), false);
}
