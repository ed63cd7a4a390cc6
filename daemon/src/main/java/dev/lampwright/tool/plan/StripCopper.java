package dev.lampwright.tool.plan;

import dev.lampwright.wiring.CopperTrack;
import dev.lampwright.wiring.Rating;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The strip's own conductors where they carry most. Between two points the current only grows towards a point, so the segments next to the
 * points are the worst.
 */
final class StripCopper {
    /** The highest good temperature rise, and the rise from which it is too much, in K: our own choice. */
    private static final double GOOD_RISE = 20;

    private static final double MOST_RISE = 40;

    /** WS2812B datasheet (from memory): pixels work up to 80 °C. */
    private static final double MOST_C = 80;

    private final PlannedLights rig;
    private final StripModel model;
    private final ResistorLadder ladder;
    private final CopperTrack track;
    private final double warmth;

    StripCopper(PlannedLights rig, StripModel model, ResistorLadder ladder) {
        this.rig = rig;
        this.model = model;
        this.ladder = ladder;
        track = CopperTrack.ofLoop(rig.wiring().strip().loopOhmsPerMetre());
        warmth = Math.max(0, MOST_C - rig.wiring().around().ambientC());
    }

    /**
     * The worst segment.
     *
     * @param between the pixel on its near side
     * @param amps the RMS current through it, in A
     */
    record Worst(int between, double amps) {}

    /** The segment that carries most; empty for a strip of one pixel, where nothing flows. */
    Worst worst() {
        return worst(
                rig.wiring().strip().points().stream().map(Wiring.Point::pixel).toList());
    }

    /** The segment that carries most, of those next to given points. */
    Worst worst(List<Integer> points) {
        int segments = rig.setup().pixels() - 1;
        return points.stream()
                .flatMapToInt(pixel -> IntStream.of(pixel - 1, pixel))
                .filter(segment -> segment >= 0 && segment < segments)
                .mapToObj(segment -> new Worst(segment, model.heat(ladder.segmentShares(segment))))
                .reduce(new Worst(0, 0), (a, b) -> b.amps > a.amps ? b : a);
    }

    /** The temperature rise above the air that a current causes, in K. */
    double rise(double amps) {
        return track.rise(amps);
    }

    /** The highest good temperature rise: 20 K, or less if the air is closer to 80 °C. */
    double goodRise() {
        return Math.min(GOOD_RISE, warmth / 2);
    }

    /** The temperature rise from which it is too much: 40 K, or less if the air is closer to 80 °C. */
    double mostRise() {
        return Math.min(MOST_RISE, warmth);
    }

    /** The current that causes the highest good temperature rise, in A. */
    double goodAmps() {
        return track.amps(goodRise());
    }

    /** The current that it carries without getting too warm. */
    Rating rating() {
        return new Rating(
                track.amps(mostRise()),
                FigureText.fixed(mostRise(), 0) + " K in air of "
                        + FigureText.plain(rig.wiring().around().ambientC())
                        + " °C (our own choice), warming by IPC-2221");
    }

    /** The source of its size. */
    String size() {
        boolean thickness = isAssumed("copper_um");
        boolean width = isAssumed("copper_mm");
        if (thickness && width) {
            return "copper of 35 µm × 2.5 mm, assumed";
        }
        return thickness
                ? "copper 35 µm thick, assumed"
                : width ? "copper 2.5 mm wide, assumed" : "copper as in the file";
    }

    /** Whether the file does not say how thick or how wide it is. */
    boolean assumed() {
        return isAssumed("copper_um") || isAssumed("copper_mm");
    }

    private boolean isAssumed(String key) {
        return rig.wiring().defaults().containsKey("wiring.strip." + key);
    }

    /** The share of the good current that the strip of a rig carries at its most loaded place. */
    static double used(PlannedLights rig) {
        StripModel model = new StripModel(rig);
        StripCopper copper = new StripCopper(rig, model, model.wired());
        return copper.worst().amps() / copper.goodAmps();
    }
}
