package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;

/** Finds the wires of a rig and what they carry. */
final class WireRuns {
    /** Where the strip's part of the file begins. */
    static final String STRIP_KEY = "wiring.strip";

    private final PlannedLights rig;
    private final StripModel model;
    private final Loads loads;

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

    private WireRun toStrip(ResistorLadder ladder, Wiring.Point point) {
        Wiring.Feed feed = rig.wiring().strip().feed();
        return run(
                "the strip at pixel " + point.pixel(),
                STRIP_KEY,
                rig.setup().stripSupply(),
                model.mostIn(ladder, point.pixel()),
                point.metres(),
                feed);
    }

    private WireRun toLight(Wiring.Light light) {
        int supply = loads.supplyOf(light);
        double amps = Math.min(loads.light(light), loads.held(supply));
        return run(light.name(), "wiring.dimmers." + light.name(), supply, amps, light.metres(), light.feed());
    }

    private WireRun run(String name, String key, int supply, double amps, double metres, Wiring.Feed feed) {
        double drop = amps * feed.wire().loopOhms(metres, rig.wiring().wireC());
        return new WireRun(name, key, supply, amps, metres, drop, feed);
    }
}
