package dev.lampwright.tool.plan;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.tool.plan.Verdict.Figure;
import dev.lampwright.tool.plan.Verdict.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Judges how warm the strip's own conductors get. */
final class CopperJudge {
    private static final double NOISE = 1e-9;

    /** Solder has melted by then. */
    private static final double DESTROYED_K = 200;

    private final PlannedLights rig;
    private final StripModel model;
    private final StripCopper copper;

    CopperJudge(PlannedLights rig, StripModel model) {
        this.rig = rig;
        this.model = model;
        copper = new StripCopper(rig, model, model.wired());
    }

    /** The verdict; none for a single pixel. */
    List<Verdict> verdicts() {
        return rig.setup().pixels() > 1 ? List.of(verdict()) : List.of();
    }

    private Verdict verdict() {
        StripCopper.Worst worst = copper.worst();
        double rise = copper.rise(worst.amps());
        Figure good = Figure.atMost(rise, copper.goodRise(), "K", source());
        String what = FigureText.amps(worst.amps()) + (rig.wiring().strip().together() ? " RMS" : "")
                + " between pixels " + worst.between() + " and " + (worst.between() + 1) + " warm it by "
                + warmth(rise) + " (" + copper.size() + "); up to "
                + FigureText.fixed(copper.goodRise(), 0) + " K is good";
        Figure figure = Figure.atMost(rise, copper.mostRise(), "K", source());
        if (good.within(1)) {
            return new Verdict(
                    Severity.GOOD,
                    Phrase.of("plan_copper", "the strip's own copper"),
                    what,
                    Verdict.FINE,
                    figure,
                    copper.assumed());
        }
        return new Verdict(
                figure.within(1) ? Severity.CARE : Severity.OVER,
                Phrase.of("plan_copper", "the strip's own copper"),
                what,
                Phrase.plain(remedy()),
                figure,
                copper.assumed());
    }

    /** In words; if the strip would be destroyed, without a number. */
    private String warmth(double rise) {
        return rise > DESTROYED_K
                ? "more than " + FigureText.fixed(DESTROYED_K, 0) + " K"
                : FigureText.fixed(rise, 0) + " K, to "
                        + FigureText.fixed(rig.wiring().around().ambientC() + rise, 0) + " °C";
    }

    private String source() {
        return "20 and 40 K at most: our own choice; warming by IPC-2221, external conductors, in air of "
                + FigureText.plain(rig.wiring().around().ambientC()) + " °C";
    }

    private String remedy() {
        List<String> ways = new ArrayList<>();
        words(rig, model).ifPresent(ways::add);
        int milliamps = new CeilingFinder(rig).most(rig.setup().stripSupply(), StripCopper::used);
        if (milliamps > 1000 * new Loads(rig).dark()) {
            ways.add("lower supply.ceiling_mA to " + milliamps + " mA");
        }
        if (copper.assumed()) {
            ways.add("set copper_um and copper_mm in [wiring.strip] if it has more copper");
        }
        return String.join("; or ", ways);
    }

    /**
     * Where to feed the strip so that its copper stays cool and fuses protect it, in words.
     *
     * @param rig the rig
     * @param model its strip
     * @return the fewest points that were found, with their fuses; empty if there are none
     */
    static Optional<String> words(PlannedLights rig, StripModel model) {
        List<Integer> points = Remedies.fewest(rig, places -> suits(rig, model, places));
        if (points.isEmpty()) {
            return Optional.empty();
        }
        ResistorLadder ladder = ladder(rig, model, points);
        double fuse = points.stream()
                .mapToDouble(point -> FuseRatings.forLoad(model.heat(ladder.wireShares(point))))
                .max()
                .orElseThrow();
        String fused = ", with a fuse of " + FigureText.plain(fuse) + " A";
        return Optional.of(
                points.size() == 1
                        ? "feed the strip " + (points.get(0) > 0 ? "in the middle, " : "") + "at pixel " + points.get(0)
                                + fused
                        : "feed the strip at " + points.size() + " points, pixels "
                                + points.stream().map(String::valueOf).collect(Collectors.joining(", ")) + fused
                                + " each");
    }

    private static boolean suits(PlannedLights rig, StripModel model, List<Integer> places) {
        ResistorLadder ladder = ladder(rig, model, places);
        StripCopper copper = new StripCopper(rig, model, ladder);
        return copper.worst(places).amps() <= copper.goodAmps() * (1 + NOISE)
                && places.stream()
                        .allMatch(point -> FuseRatings.between(
                                        model.heat(ladder.wireShares(point)),
                                        copper.rating().amps())
                                .isPresent());
    }

    private static ResistorLadder ladder(PlannedLights rig, StripModel model, List<Integer> places) {
        return model.ladder(rig.wiring().strip().feed().wire(), Remedies.wired(places, Remedies.longest(rig)));
    }
}
