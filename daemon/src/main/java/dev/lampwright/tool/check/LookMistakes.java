package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.MistakeText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Mistakes in looks that only show when they are drawn. */
public final class LookMistakes {
    private LookMistakes() {}

    /** Keys that make a layer move, the likeliest first. */
    private static final List<String> MOVING = List.of(
            "speed_px_per_s", "speed_zones_per_s", "cycle_s", "glint_s", "strikes_per_px_s", "strike_K", "steps", "by");

    /**
     * Draws all looks.
     *
     * @param examined a configuration and its text
     * @param progress receives each look that is drawn
     * @return a look that cannot be drawn, or otherwise those that flash too often, if that is not allowed
     */
    public static List<Mistake> of(Examined examined, Progress progress) {
        return of(examined, progress, new CheckMemory());
    }

    /**
     * Draws all looks, except those whose result is known.
     *
     * @param examined a configuration and its text
     * @param progress receives each look that is drawn
     * @param memory has the results of looks that were drawn before
     * @return as {@link #of(Examined, Progress)}
     */
    public static List<Mistake> of(Examined examined, Progress progress, CheckMemory memory) {
        return of(examined, examined.config(), progress, memory);
    }

    /**
     * Draws one look alone.
     *
     * @param examined a configuration and its text
     * @param look the name of one of its looks
     * @param progress is called for every frame
     * @return what is wrong with it, in the words of {@link #of(Examined, Progress)}
     */
    public static List<Mistake> of(Examined examined, String look, Progress progress) {
        return of(examined, OneLook.of(examined.config(), look), progress, new CheckMemory());
    }

    private static List<Mistake> of(Examined examined, Config config, Progress progress, CheckMemory memory) {
        Rehearsal rehearsal = Rehearsal.of(config, progress, memory);
        Optional<Rehearsal.Failing> failing = rehearsal.failing();
        if (failing.isPresent()) {
            String what = "cannot be drawn: " + failing.get().why();
            return List.of(examined.mistake(
                    List.of("looks", failing.get().look()),
                    new MistakeText("not_drawn", what, "change the look")
                            .with("why", failing.get().why())));
        }
        List<Mistake> mistakes = new ArrayList<>();
        if (!config.light().guard().allowFlashing()) {
            FlashCheck.of(config, rehearsal, progress, memory)
                    .forEach(flashing -> mistakes.add(mistake(examined, flashing)));
        }
        return mistakes;
    }

    private static Mistake mistake(Examined examined, FlashCheck.Flashing flashing) {
        boolean oneLayer = flashing.layers().size() == 1;
        String what = "flashes " + flashing.flashes() + " times in a second"
                + (oneLayer ? "" : blame(examined, flashing)) + "; more than three can cause seizures";
        String code = oneLayer ? "flashes" : flashing.layers().isEmpty() ? "flashes_several" : "flashes_together";
        return examined.mistake(
                path(examined, flashing),
                new MistakeText(code, what, "slow it down, or make it dimmer")
                        .with("flashes", flashing.flashes())
                        .with("layers", layers(examined, flashing)));
    }

    private static List<String> path(Examined examined, FlashCheck.Flashing flashing) {
        List<String> path = new ArrayList<>(List.of("looks", flashing.look()));
        if (flashing.layers().size() != 1) {
            return path;
        }
        int own = place(examined, flashing.look(), flashing.layers().get(0));
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

    /**
     * Where a layer that is drawn stands in the file: those of a swatch lie below the look's own, and those that are hidden are not drawn.
     *
     * @param examined a configuration and its text
     * @param look the name of one of its looks
     * @param drawn which of the layers that are drawn, from 0, the lowest
     * @return its index among the look's layers; below 0 for one of the swatch
     */
    public static int place(Examined examined, String look, int drawn) {
        List<String> path = List.of("looks", look);
        List<Integer> shown = shown(examined, path);
        int ofSwatch = examined.keys(path).contains("swatch")
                ? examined.config().looks().get(look).layers().size() - shown.size()
                : 0;
        int own = drawn - ofSwatch;
        return own >= 0 && own < shown.size() ? shown.get(own) : own;
    }

    private static List<Integer> shown(Examined examined, List<String> look) {
        return IntStream.range(0, examined.elements(look, "layers"))
                .filter(layer ->
                        !examined.isTrue(List.of(look.get(0), look.get(1), "layers", String.valueOf(layer), "hidden")))
                .boxed()
                .toList();
    }

    private static String blame(Examined examined, FlashCheck.Flashing flashing) {
        if (flashing.layers().isEmpty()) {
            return " by several of its layers";
        }
        return " by its layers " + layers(examined, flashing) + " together";
    }

    private static String layers(Examined examined, FlashCheck.Flashing flashing) {
        return flashing.layers().stream()
                .map(layer -> String.valueOf(place(examined, flashing.look(), layer)))
                .collect(Collectors.joining(" and "));
    }
}
