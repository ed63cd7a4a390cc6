package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wiring;

/**
 * The level of the strip's data.
 *
 * @param volts high level as it is driven
 * @param needed least high level that the first pixel is sure to take
 */
record DataLevel(double volts, double needed) {
    /** WS2812B datasheet: V_IH is 0.7 × VDD at least. */
    private static final double SHARE = 0.7;

    /** Strips of a higher voltage have logic of 5 V within (common practice, no source). */
    private static final double LOGIC_VOLTS = 5;

    private static final double HIGHEST_OWN_VOLTS = 5.5;

    /**
     * The level of a rig.
     *
     * @param rig the rig
     * @return its level
     */
    static DataLevel of(PlannedLights rig) {
        double supply = rig.stripSupply().volts();
        double logic = supply > HIGHEST_OWN_VOLTS ? LOGIC_VOLTS : supply;
        Wiring.Board board = rig.wiring().board();
        return new DataLevel(board.shifter() ? logic : board.logicVolts(), SHARE * logic);
    }

    /** Whether a pixel is sure to see it. */
    boolean enough() {
        return volts >= needed;
    }
}
