package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Rating;
import dev.lampwright.wiring.Surroundings;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Finds the wires of a rig and what they carry. */
final class WireRuns {
    /** Where the strip's part of the file begins. */
    static final String STRIP_KEY = "wiring.strip";

    private final PlannedLights rig;
    private final StripModel model;
    private final Loads loads;

    /**
     * What a wire carries.
     *
     * @param mean as a mean, in A
     * @param rms its RMS, in A
     * @param pulse during a pulse, in A
     * @param lossy the current from which its drop is calculated, in A
     */
    private record Flow(double mean, double rms, double pulse, double lossy) {}

    WireRuns(PlannedLights rig, StripModel model) {
        this.rig = rig;
        this.model = model;
        loads = new Loads(rig);
    }

    /** All wires: to the strip, then to the plain lights. */
    List<WireRun> all() {
        List<WireRun> runs = new ArrayList<>();
        ResistorLadder ladder = model.wired();
        rig.wiring().strip().points().forEach(point -> runs.add(toStrip(ladder, point)));
        rig.wiring().lights().forEach(light -> runs.add(toLight(light)));
        return runs;
    }

    /**
     * The RMS current of one wire alone.
     *
     * @param index its place among {@link #all}
     * @return A (RMS)
     */
    double rms(int index) {
        List<Wiring.Point> points = rig.wiring().strip().points();
        if (index < points.size()) {
            return model.heat(model.wired().wireShares(points.get(index).pixel()));
        }
        Wiring.Light light = rig.wiring().lights().get(index - points.size());
        double full = loads.light(light);
        return Math.sqrt(full * Math.min(full, loads.held(loads.supplyOf(light))));
    }

    private WireRun toStrip(ResistorLadder ladder, Wiring.Point point) {
        double[] shares = ladder.wireShares(point.pixel());
        double mean = model.mostIn(ladder, point.pixel());
        double pulse = rig.wiring().strip().together()
                ? loads.fullPixel() * Arrays.stream(shares).sum()
                : mean;
        Rating copper = new StripCopper(rig, model, ladder).rating();
        return run(
                "the strip at pixel " + point.pixel(),
                STRIP_KEY,
                rig.setup().stripSupply(),
                new Flow(mean, model.heat(shares), Math.max(mean, pulse), mean),
                point.metres(),
                rig.wiring().strip().feed(),
                Optional.of(new WireRun.Part(WireRun.Kind.COPPER, "the strip's own copper", copper)));
    }

    /** By the mean that the ceiling allows: PWM of {@code full} at a duty of {@code mean ÷ full} has an RMS of √(mean × full). */
    private WireRun toLight(Wiring.Light light) {
        int supply = loads.supplyOf(light);
        double full = loads.light(light);
        double mean = Math.min(full, loads.held(supply));
        return run(
                light.name(),
                "wiring.dimmers." + light.name(),
                supply,
                new Flow(mean, Math.sqrt(mean * full), full, full),
                light.metres(),
                light.feed(),
                Optional.empty());
    }

    private WireRun run(
            String name,
            String key,
            int supply,
            Flow flow,
            double metres,
            Wiring.Feed feed,
            Optional<WireRun.Part> copper) {
        Surroundings around = rig.wiring().around();
        double ohms =
                feed.wire().loopOhms(metres, rig.wiring().wireC()) + feed.partOhms(FuseRatings.assumed(flow.mean));
        List<WireRun.Part> parts = new ArrayList<>();
        parts.add(new WireRun.Part(
                WireRun.Kind.WIRE, feed.wire().label(), feed.wire().carries(around)));
        feed.connectorAmps()
                .ifPresent(amps ->
                        parts.add(new WireRun.Part(WireRun.Kind.CONNECTOR, "its connector", around.connector(amps))));
        copper.ifPresent(parts::add);
        double shorted = rig.wiring().supplies().get(supply).leastVolts() / ohms;
        return new WireRun(
                name, key, supply, flow.mean, flow.rms, flow.pulse, shorted, metres, flow.lossy * ohms, feed, parts);
    }
}
