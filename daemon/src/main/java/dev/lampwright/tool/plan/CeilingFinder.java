package dev.lampwright.tool.plan;

import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Finds which ceiling a part of the wiring would need. The ceiling limits the mean, but a part heats up by the root mean square, so for a
 * dimmed lamp half the current requires a quarter of the ceiling.
 */
public final class CeilingFinder {
    private static final int MOST_MILLIAMPS = 65_535;

    private final PlannedLights rig;

    CeilingFinder(PlannedLights rig) {
        this.rig = rig;
    }

    /**
     * What the weakest part behind a supply needs.
     *
     * @param supply index of the supply
     * @param part what the part is called, such as {@code fuse of work}
     * @param milliamps the highest ceiling at which it stays within good practice, in mA; 0 if there is none
     */
    public record Needed(int supply, String part, int milliamps) {}

    /** A part, and how much of its good load is used at some ceiling; 1 is all of it. */
    private record Watched(String name, ToDoubleFunction<PlannedLights> used) {}

    /**
     * What the weakest part behind each supply needs.
     *
     * @return at most one per supply, in their order; supplies without a limiting part are left out
     */
    List<Needed> all() {
        List<Needed> needed = new ArrayList<>();
        for (int i = 0; i < rig.wiring().supplies().size(); i++) {
            weakest(i).ifPresent(needed::add);
        }
        return needed;
    }

    private Optional<Needed> weakest(int supply) {
        return watched(supply).stream()
                .map(part -> new Needed(supply, part.name, most(supply, part.used)))
                .filter(needed -> needed.milliamps < MOST_MILLIAMPS)
                .min(Comparator.comparingInt(Needed::milliamps));
    }

    /**
     * The highest ceiling at which a limit is met.
     *
     * @param supply index of the supply whose ceiling it is
     * @param used how much of a limit is used, 1 at the limit, for a rig with a different ceiling; never decreases with the ceiling
     * @return mA; 0 if even a dark rig exceeds it
     */
    int most(int supply, ToDoubleFunction<PlannedLights> used) {
        int holds = 0;
        int breaks = MOST_MILLIAMPS + 1;
        while (breaks - holds > 1) {
            int middle = (holds + breaks) / 2;
            if (used.applyAsDouble(with(supply, middle)) <= 1) {
                holds = middle;
            } else {
                breaks = middle;
            }
        }
        return holds;
    }

    private List<Watched> watched(int supply) {
        List<Watched> parts = new ArrayList<>();
        rig.wiring()
                .supplies()
                .get(supply)
                .ratedAmps()
                .ifPresent(rated -> parts.add(new Watched(
                        "supply itself",
                        other -> new Loads(other).drawn(supply) / (SupplyJudge.STEADY_SHARE * rated))));
        rig.wiring()
                .supplies()
                .get(supply)
                .connectorAmps()
                .ifPresent(rated -> parts.add(new Watched(
                        "connector of the supply",
                        other -> new Loads(other).rms(supply)
                                / (SupplyJudge.STEADY_SHARE
                                        * other.wiring()
                                                .around()
                                                .connector(rated)
                                                .amps()))));
        List<WireRun> runs = new WireRuns(rig, new StripModel(rig)).all();
        for (int i = 0; i < runs.size(); i++) {
            if (runs.get(i).supply() == supply) {
                parts.addAll(ofRun(runs.get(i), i));
            }
        }
        if (supply == rig.setup().stripSupply() && rig.setup().pixels() > 1) {
            parts.add(new Watched("strip's own copper", StripCopper::used));
        }
        return parts;
    }

    private static List<Watched> ofRun(WireRun run, int index) {
        List<Watched> parts = new ArrayList<>();
        for (WireRun.Part part : run.parts()) {
            double good = RunJudge.goodShare(part.kind()) * part.rating().amps();
            if (part.kind() != WireRun.Kind.COPPER) {
                String kind = part.kind() == WireRun.Kind.WIRE ? "wire to " : "connector of ";
                parts.add(new Watched(kind + run.name(), other -> rms(other, index) / good));
            }
        }
        run.feed()
                .fuseAmps()
                .ifPresent(fuse -> parts.add(new Watched(
                        "fuse of " + run.name(), other -> rms(other, index) / (FuseRatings.STEADY_SHARE * fuse))));
        return parts;
    }

    private static double rms(PlannedLights other, int index) {
        return new WireRuns(other, new StripModel(other)).rms(index);
    }

    private PlannedLights with(int supply, int milliamps) {
        Setup setup = rig.setup();
        List<Integer> ceilings = new ArrayList<>(setup.ceilingsMilliamps());
        ceilings.set(supply, milliamps);
        return new PlannedLights(
                rig.name(), setup.withCeilings(ceilings), rig.framesPerSecond(), rig.baud(), rig.wiring());
    }
}
