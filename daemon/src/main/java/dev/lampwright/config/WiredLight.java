package dev.lampwright.config;

import dev.lampwright.wiring.Wiring;
import java.util.List;

/** One table of {@code [wiring.dimmers]}: how a plain light is wired. */
final class WiredLight {
    private static final double MOST_WATTS = 1000;
    private static final double MOST_HZ = 1e6;
    /** Outputs 2 and 3 of the reference firmware, and all others: {@code firmware-notes/README.md}, the table of dimmers. */
    private static final double FINE_HZ = 3906.25;

    private static final double COARSE_HZ = 7812.5;

    private WiredLight() {}

    /**
     * Reads the table.
     *
     * @param name the light's name
     * @param outputs its dimmers
     * @param table the table
     * @return how it is wired
     */
    static Wiring.Light read(String name, List<Integer> outputs, Table table) {
        return new Wiring.Light(
                name,
                outputs,
                WiredFeed.read(table),
                table.number("length_m", WiredFeed.SHORTEST_M, WiredFeed.LONGEST_M, WiredFeed.USUAL_M),
                table.numberIfThere("load_W", 0.001, MOST_WATTS),
                table.number("pwm_Hz", 1, MOST_HZ, usualHz(outputs)));
    }

    private static double usualHz(List<Integer> outputs) {
        return outputs.stream().anyMatch(output -> output == 2 || output == 3) ? FINE_HZ : COARSE_HZ;
    }
}
