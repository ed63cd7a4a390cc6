package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;

/** Sets the direction of each zone: a band runs along it. */
final class DirectionStep implements Step {
    private static final int LEVEL = 140;

    @Override
    public String name() {
        return "directions";
    }

    @Override
    public String title() {
        return "which way the zones run";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        Map<String, Findings.Run> zones = new LinkedHashMap<>();
        for (Map.Entry<String, Findings.Run> zone : before.zones().entrySet()) {
            zones.put(zone.getKey(), directed(zone.getKey(), zone.getValue(), before, bench));
        }
        if (zones.isEmpty()) {
            bench.say(Phrase.of("no_zones", "No zones are named, so there is nothing to ask."));
        }
        return before.withZones(zones);
    }

    private static Findings.Run directed(String name, Findings.Run run, Findings before, FittingBench bench)
            throws LeaveException, IOException {
        if (run.first() == run.last()) {
            return run;
        }
        Setup setup = FittingSetups.of(before);
        int level = FittingSetups.level(setup, Scenes.bandWidth(run.first(), run.last()), LEVEL);
        bench.show(setup, Scenes.band(before.knownOrder(), level, run.first(), run.last(), "G"));
        boolean right = bench.ask(Question.yesOrNo(
                        "A band runs along " + name + ". Does it run in the direction in which " + name
                                + " should fill?",
                        "Bars grow in the direction of the band, for instance from left to right. With n, the zone is reversed.")
                .coded("directions_right", "zone", name));
        return right ? run : run.reversed();
    }
}
