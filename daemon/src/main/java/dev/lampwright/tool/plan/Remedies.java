package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Ways to raise a strip to a voltage.
 *
 * @param points the fewest points found to be enough with the existing wire, by pixel; empty if no number of them is
 * @param wire the thinnest wire that is enough with the existing points; empty if none is
 * @param both fewer points with a thicker wire, if that takes less copper than either alone; otherwise empty
 */
public record Remedies(List<Integer> points, Optional<Wire> wire, Optional<Both> both) {
    private static final int MOST_POINTS = 32;

    /** How far the outer points are from the ends, as a share of the distance between points, apart from 0 and a half. */
    private static final List<Double> INSETS = List.of(0.25, 0.375, 0.125);

    /** Keeps a copy of the list. */
    public Remedies {
        points = List.copyOf(points);
    }

    /**
     * A thicker wire to more points.
     *
     * @param wire size of all wires
     * @param points where they join, by pixel
     */
    public record Both(Wire wire, List<Integer> points) {
        /** Keeps a copy of the list. */
        public Both {
            points = List.copyOf(points);
        }

        private double copper() {
            return wire.squareMm() * points.size();
        }
    }

    /**
     * Searches for all three. Every new wire is assumed to be as long as the longest existing one.
     *
     * @param model the strip
     * @param rig the rig it is in
     * @param volts voltage to reach at every pixel
     * @return what was found
     */
    static Remedies of(StripModel model, PlannedLights rig, double volts) {
        Wiring.Strip strip = rig.wiring().strip();
        double metres = longest(rig);
        Wire wire = strip.feed().wire();
        List<Integer> points = fewest(rig, places -> reaches(model, wire, wired(places, metres), volts));
        Optional<Wire> thicker = wire.thicker().stream()
                .filter(other -> reaches(model, other, strip.points(), volts))
                .findFirst();
        return new Remedies(points, thicker, both(model, rig, volts, points.isEmpty() ? MOST_POINTS : points.size()));
    }

    private static Optional<Both> both(StripModel model, PlannedLights rig, double volts, int enough) {
        double metres = longest(rig);
        int now = rig.wiring().strip().points().size();
        List<Wire> sizes = rig.wiring().strip().feed().wire().thicker();
        Optional<Both> best = Optional.empty();
        for (int count = now + 1; count < enough && !sizes.isEmpty(); count++) {
            for (List<Integer> places : spreads(count, rig.setup().pixels())) {
                List<Wiring.Point> wired = wired(places, metres);
                Optional<Both> one = reaches(model, sizes.get(sizes.size() - 1), wired, volts)
                        ? sizes.stream()
                                .filter(size -> reaches(model, size, wired, volts))
                                .findFirst()
                                .map(size -> new Both(size, places))
                        : Optional.empty();
                if (one.isPresent()
                        && (best.isEmpty() || one.get().copper() < best.get().copper())) {
                    best = one;
                }
            }
        }
        return best;
    }

    private static boolean reaches(StripModel model, Wire wire, List<Wiring.Point> points, double volts) {
        return model.reaches(model.ladder(wire, points), volts);
    }

    /**
     * The fewest points that are enough.
     *
     * @param rig the rig
     * @param does whether given points, by pixel, are enough
     * @return the points; empty if up to 32 were tried without success
     */
    static List<Integer> fewest(PlannedLights rig, Predicate<List<Integer>> does) {
        int pixels = rig.setup().pixels();
        return IntStream.rangeClosed(1, Math.min(MOST_POINTS, pixels))
                .boxed()
                .flatMap(count -> spreads(count, pixels).stream())
                .filter(does)
                .findFirst()
                .orElse(List.of());
    }

    /** Length of the longest wire to the strip, in m. */
    static double longest(PlannedLights rig) {
        return rig.wiring().strip().points().stream()
                .mapToDouble(Wiring.Point::metres)
                .max()
                .orElseThrow();
    }

    private static List<List<Integer>> spreads(int count, int pixels) {
        Stream<List<Integer>> inset =
                count == 1 ? Stream.empty() : INSETS.stream().map(share -> within(count, pixels, share));
        return Stream.concat(Stream.of(fromEndToEnd(count, pixels), inTheMiddles(count, pixels)), inset)
                .toList();
    }

    /** Points as far apart as possible: the ends first, where a strip is easiest to solder. One is at pixel 0. */
    static List<Integer> fromEndToEnd(int count, int pixels) {
        return spread(count, i -> count == 1 ? 0 : (double) i / (count - 1) * (pixels - 1));
    }

    /** Points in the middle of equal stretches, where each feeds the shortest distance. */
    static List<Integer> inTheMiddles(int count, int pixels) {
        return spread(count, i -> (i + 0.5) / count * pixels - 0.5);
    }

    /** Points between these two layouts: the outer ones are some share of a stretch away from the ends. */
    private static List<Integer> within(int count, int pixels, double share) {
        return spread(count, i -> (i + share) / (count - 1 + 2 * share) * (pixels - 1));
    }

    private static List<Integer> spread(int count, IntToDoubleFunction place) {
        TreeSet<Integer> points = new TreeSet<>();
        IntStream.range(0, count).forEach(i -> points.add((int) Math.round(place.applyAsDouble(i))));
        return List.copyOf(points);
    }

    /** Points with wires of one length. */
    static List<Wiring.Point> wired(List<Integer> points, double metres) {
        return points.stream().map(pixel -> new Wiring.Point(pixel, metres)).toList();
    }
}
