package dev.lampwright.config;

import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.OptionalDouble;

/** One table of {@code [wiring.dimmers]}: how a plain light is wired. */
final class WiredLight {
    private static final double MOST_WATTS = 1000;
    private static final double MOST_HZ = 1e6;
    /** Outputs 2 and 3 of the reference firmware, and all others: {@code firmware-notes/README.md}, the table of dimmers. */
    private static final double FINE_HZ = 3906.25;

    private static final double COARSE_HZ = 7812.5;

    private static final Key<Double> LENGTH = Key.number("length_m", WiredFeed.SHORTEST_M, WiredFeed.LONGEST_M)
            .usual(WiredFeed.USUAL_M, Wording.number(WiredFeed.USUAL_M))
            .example("1.5", "of the wires, one way");
    private static final Key<Double> LOAD = Key.number("load_W", 0.001, MOST_WATTS)
            .example("19", "what is written on the lights; compared with full_mA");
    private static final Key<Double> PWM =
            Key.number("pwm_Hz", 1, MOST_HZ).without("3906.25 or 7812.5").comment("7812.5", "as in the firmware");

    /** The wires of a plain light. */
    static final Section SECTION = Section.of(
                    "wiring.dimmers.NAME", "the wires of a light of `[dimmers]`", LENGTH, LOAD, PWM)
            .after(WiredFeed.KEYS);

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
                WiredFeed.read(table.as(SECTION)),
                table.get(LENGTH),
                table.find(LOAD).map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                table.get(PWM.usual(usualHz(outputs), Wording.number(usualHz(outputs)))));
    }

    private static double usualHz(List<Integer> outputs) {
        return outputs.stream().anyMatch(output -> output == 2 || output == 3) ? FINE_HZ : COARSE_HZ;
    }
}
