package dev.lampwright.tool.plan;

import dev.lampwright.wiring.CopperTrack;
import dev.lampwright.wiring.Rating;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The strip's own conductors where most flows through them. Between two points current only grows towards a point, so the segments beside the points are the
 * worst.
 */
final class StripCopper {
    /** Most warming that is good, and from which on it is too much, in K: our own choice. */
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

    /** The segment that carries most; none of a strip of one pixel, where nothing flows. */
    Worst worst() {
        return worst(
                rig.wiring().strip().points().stream().map(Wiring.Point::pixel).toList());
    }

    /** The segment that carries most of those beside some points. */
    Worst worst(List<Integer> points) {
        int segments = rig.setup().pixels() - 1;
        return points.stream()
                .flatMapToInt(pixel -> IntStream.of(pixel - 1, pixel))
                .filter(segment -> segment >= 0 && segment < segments)
                .mapToObj(segment -> new Worst(segment, model.heat(ladder.segmentShares(segment))))
                .reduce(new Worst(0, 0), (a, b) -> b.amps > a.amps ? b : a);
    }

    /** How warm a current makes it above the air, in K. */
    double rise(double amps) {
        return track.rise(amps);
    }

    /** The most warming that is good: 20 K, less where the air leaves less to 80 °C. */
    double goodRise() {
        return Math.min(GOOD_RISE, warmth / 2);
    }

    /** The warming from which on it is too much: 40 K, less where the air leaves less to 80 °C. */
    double mostRise() {
        return Math.min(MOST_RISE, warmth);
    }

    /** What makes it as warm as is good, in A. */
    double goodAmps() {
        return track.amps(goodRise());
    }

    /** What it carries without growing too warm. */
    Rating rating() {
        return new Rating(
                track.amps(mostRise()),
                FigureText.fixed(mostRise(), 0) + " K in air of "
                        + FigureText.plain(rig.wiring().around().ambientC())
                        + " °C (our own choice), warming by IPC-2221");
    }

    /** Where its size comes from. */
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

    /** Whether the file leaves out how thick or how wide it is. */
    boolean assumed() {
        return isAssumed("copper_um") || isAssumed("copper_mm");
    }

    private boolean isAssumed(String key) {
        return rig.wiring().defaults().containsKey("wiring.strip." + key);
    }

    /** What share of the current that is good the strip of a rig carries where it carries most. */
    static double used(PlannedLights rig) {
        StripModel model = new StripModel(rig);
        StripCopper copper = new StripCopper(rig, model, model.wired());
        return copper.worst().amps() / copper.goodAmps();
    }
}
