package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.tool.check.FlashCheck;
import dev.lampwright.tool.check.Progress;
import dev.lampwright.tool.check.Rehearsal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Mistakes in looks that only show when they are drawn. */
final class LookMistakes {
    private LookMistakes() {}

    /** Keys that make a layer move, the likeliest first. */
    private static final List<String> MOVING = List.of(
            "speed_px_per_s", "speed_zones_per_s", "cycle_s", "glint_s", "strikes_per_px_s", "strike_K", "steps", "by");

    /**
     * Draws the looks.
     *
     * @param examined a configuration and its text
     * @param progress receives each look that is drawn
     * @return a look that cannot be drawn, or otherwise those that flash too often, if that is not allowed
     */
    static List<Mistake> of(Examined examined, Progress progress) {
        Config config = examined.config();
        Rehearsal rehearsal = Rehearsal.of(config, progress);
        Optional<Rehearsal.Failing> failing = rehearsal.failing();
        if (failing.isPresent()) {
            String what = "cannot be drawn: " + failing.get().why();
            return List.of(examined.mistake(List.of("looks", failing.get().look()), what, "change the look"));
        }
        List<Mistake> mistakes = new ArrayList<>();
        if (!config.light().guard().allowFlashing()) {
            FlashCheck.of(config, rehearsal).forEach(flashing -> mistakes.add(mistake(examined, flashing)));
        }
        return mistakes;
    }

    private static Mistake mistake(Examined examined, FlashCheck.Flashing flashing) {
        boolean oneLayer = flashing.layers().size() == 1;
        String what = "flashes " + flashing.flashes() + " times in a second"
                + (oneLayer ? "" : blame(flashing.layers())) + "; more than three can cause seizures";
        return examined.mistake(path(examined, flashing), what, "slow it down, or make it dimmer");
    }

    private static List<String> path(Examined examined, FlashCheck.Flashing flashing) {
        List<String> path = new ArrayList<>(List.of("looks", flashing.look()));
        if (flashing.layers().size() != 1) {
            return path;
        }
        int own = flashing.layers().get(0) - layersOfSwatch(examined, flashing.look());
        if (own < 0) {
            path.add("swatch");
            return path;
        }
        path.addAll(List.of("layers", String.valueOf(own)));
        Set<String> keys = examined.keys(path);
        Optional<String> key = flashing.byRhythm()
                ? Optional.of("rhythm")
                : MOVING.stream().filter(keys::contains).findFirst();
        key.ifPresent(path::add);
        return path;
    }

    /** They are below the look's own. */
    private static int layersOfSwatch(Examined examined, String look) {
        List<String> path = List.of("looks", look);
        return examined.keys(path).contains("swatch")
                ? examined.config().looks().get(look).layers().size() - examined.elements(path, "layers")
                : 0;
    }

    private static String blame(List<Integer> layers) {
        if (layers.isEmpty()) {
            return " by several of its layers";
        }
        return " by its layers "
                + String.join(" and ", layers.stream().map(String::valueOf).toList()) + " together";
    }
}
