package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What brings a strip up to a voltage.
 *
 * @param points the fewest points that do with the wire there is, by pixel; empty if no number of them does
 * @param wire the thinnest wire that does with the points there are; nothing if none does
 */
public record Remedies(List<Integer> points, Optional<Wire> wire) {
    private static final int MOST_POINTS = 32;

    /** Keeps a copy of the list. */
    public Remedies {
        points = List.copyOf(points);
    }

    /**
     * Looks for both. Every new wire is reckoned as long as the longest there is.
     *
     * @param model the strip
     * @param rig the rig it is in
     * @param volts voltage to reach at every pixel
     * @return what was found
     */
    static Remedies of(StripModel model, PlannedLights rig, double volts) {
        Wiring.Strip strip = rig.wiring().strip();
        double metres =
                strip.points().stream().mapToDouble(Wiring.Point::metres).max().orElseThrow();
        Wire wire = strip.feed().wire();
        int pixels = rig.setup().pixels();
        List<Integer> fewest = IntStream.rangeClosed(1, Math.min(MOST_POINTS, pixels))
                .boxed()
                .flatMap(count -> List.of(fromEndToEnd(count, pixels), inTheMiddles(count, pixels)).stream())
                .filter(points -> model.lowest(model.ladder(wire, wired(points, metres))) >= volts)
                .findFirst()
                .orElse(List.of());
        Optional<Wire> thicker = wire.thicker().stream()
                .filter(other -> model.lowest(model.ladder(other, strip.points())) >= volts)
                .findFirst();
        return new Remedies(fewest, thicker);
    }

    /** Points as far apart as they can be: the ends first, where a strip is easiest to solder. One is at pixel 0. */
    static List<Integer> fromEndToEnd(int count, int pixels) {
        return spread(count, i -> count == 1 ? 0 : (double) i / (count - 1) * (pixels - 1));
    }

    /** Points in the middles of equal stretches, where each feeds least far. */
    static List<Integer> inTheMiddles(int count, int pixels) {
        return spread(count, i -> (i + 0.5) / count * pixels - 0.5);
    }

    private static List<Integer> spread(int count, IntToDoubleFunction place) {
        TreeSet<Integer> points = new TreeSet<>();
        IntStream.range(0, count).forEach(i -> points.add((int) Math.round(place.applyAsDouble(i))));
        return List.copyOf(points);
    }

    private static List<Wiring.Point> wired(List<Integer> points, double metres) {
        return points.stream().map(pixel -> new Wiring.Point(pixel, metres)).toList();
    }
}
