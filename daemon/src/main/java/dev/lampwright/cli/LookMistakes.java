package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.Mistake;
import dev.lampwright.tool.check.FlashCheck;
import dev.lampwright.tool.check.Rehearsal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is wrong with looks and only shows when they are drawn. */
final class LookMistakes {
    private LookMistakes() {}

    /**
     * Draws the looks.
     *
     * @param config whose looks
     * @param file what to call the file
     * @return a look that cannot be drawn, or else those that flash too often, if that is not allowed
     */
    static List<Mistake> of(Config config, String file) {
        Optional<Rehearsal.Failing> failing = Rehearsal.of(config);
        if (failing.isPresent()) {
            String what = "cannot be drawn: " + failing.get().why();
            return List.of(new Mistake(file, 0, "looks." + failing.get().look(), what, "change the look"));
        }
        List<Mistake> mistakes = new ArrayList<>();
        if (!config.light().guard().allowFlashing()) {
            FlashCheck.of(config).forEach(flashing -> mistakes.add(mistake(flashing, file)));
        }
        return mistakes;
    }

    private static Mistake mistake(FlashCheck.Flashing flashing, String file) {
        String key = "looks." + flashing.look();
        boolean oneLayer = flashing.layers().size() == 1;
        return new Mistake(
                file,
                0,
                oneLayer ? key + ".layers." + flashing.layers().get(0) : key,
                "flashes more than three times in a second" + (oneLayer ? "" : blame(flashing.layers()))
                        + ", which can cause seizures",
                "slow its rhythm or its movement, or make it dimmer");
    }

    private static String blame(List<Integer> layers) {
        if (layers.isEmpty()) {
            return " by several of its layers";
        }
        return " by its layers "
                + String.join(" and ", layers.stream().map(String::valueOf).toList()) + " together";
    }
}
