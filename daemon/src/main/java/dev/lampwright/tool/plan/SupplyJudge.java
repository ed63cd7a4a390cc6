package dev.lampwright.tool.plan;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.tool.plan.Verdict.Figure;
import dev.lampwright.wiring.Rating;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;

/** Judges what each supply must deliver, and the connector or header that carries all of it. */
final class SupplyJudge {
    /**
     * A supply runs continuously at 80 % of its rating at most (common practice, no source); so does a connector (IEC 60512-5-2: the
     * derating curve is 0.8 times the base curve).
     */
    static final double STEADY_SHARE = 0.8;

    /** The most heat that a small regulator on a board can dissipate continuously (common practice, no source). */
    private static final double MOST_HEAT_W = 1;

    private static final String RULE = "its rating; 80 % of it is common practice";

    private final PlannedLights rig;
    private final Loads loads;

    SupplyJudge(PlannedLights rig) {
        this.rig = rig;
        loads = new Loads(rig);
    }

    /** The verdicts on all supplies. */
    List<Verdict> verdicts() {
        List<Verdict> verdicts = new ArrayList<>();
        for (int i = 0; i < rig.wiring().supplies().size(); i++) {
            Wiring.Supply supply = rig.wiring().supplies().get(i);
            verdicts.add(isBoard(i) ? onBoard(i) : onSupply(i, supply));
            if (supply.connectorAmps().isPresent()) {
                verdicts.add(onConnector(i, supply, supply.connectorAmps().getAsDouble()));
            }
        }
        return verdicts;
    }

    private boolean isBoard(int index) {
        return rig.wiring().strip().fromBoard() && index == rig.setup().stripSupply();
    }

    private Verdict onSupply(int index, Wiring.Supply supply) {
        Phrase subject = Phrase.of("plan_supply", "supply " + supply.name(), "name", supply.name());
        Phrase needed = Phrase.of(
                "advice_supply",
                "fit a supply of " + FigureText.plain(supply.volts()) + " V and at least "
                        + FigureText.atLeast(toFit(index)),
                "volts",
                FigureText.plain(supply.volts()),
                "amps",
                FigureText.atLeast(toFit(index)));
        if (supply.ratedAmps().isEmpty()) {
            Phrase remedy = Phrase.of(
                    "advice_supply_open",
                    needed.english() + " (80 % rule), and set amps in [wiring.supplies] to its rating",
                    "volts",
                    FigureText.plain(supply.volts()),
                    "amps",
                    FigureText.atLeast(toFit(index)));
            Figure figure = Figure.atMost(loads.drawn(index), toFit(index), "A", RULE);
            return new Verdict(
                    Verdict.Severity.OPEN, subject, gives(index) + "; its rating is not in the file", remedy, figure);
        }
        double rated = supply.ratedAmps().getAsDouble();
        String what = gives(index) + " and is rated " + FigureText.amps(rated) + ", "
                + FigureText.percent(loads.drawn(index) / rated) + " of it";
        Verdict verdict = judged(subject, what, index, rated, needed);
        Figure pulses =
                Figure.atMost(peak(index), rated, "A", "its rating; pulses are longer than its capacitors last");
        return verdict.level() == Verdict.Severity.GOOD && !pulses.within(1)
                ? new Verdict(
                        Verdict.Severity.CARE,
                        subject,
                        what + ": over its rating in each pulse, so it may shut down",
                        needed,
                        pulses)
                : verdict;
    }

    private Verdict onConnector(int index, Wiring.Supply supply, double rated) {
        Rating rating = rig.wiring().around().connector(rated);
        double heat = loads.rms(index);
        String what = "everything on " + supply.name() + " goes through it, " + FigureText.amps(heat)
                + (heat > loads.drawn(index) * Loads.WORTH_SAYING
                        ? " RMS (" + FigureText.amps(loads.drawn(index)) + " as a mean)"
                        : "")
                + " and "
                + FigureText.watts(loads.drawn(index) * supply.volts()) + " at " + FigureText.plain(supply.volts())
                + " V, and it may carry " + FigureText.amps(rating.amps()) + whiteOf(index);
        Phrase remedy = Phrase.of(
                "advice_supply_connector",
                "wire the lights to the supply itself, or through a connector of at least "
                        + FigureText.atLeast(heat / STEADY_SHARE),
                "amps",
                FigureText.atLeast(heat / STEADY_SHARE));
        Figure figure = Figure.atMost(heat, rating.amps(), "A", rating.source());
        int milliamps = new CeilingFinder(rig)
                .most(index, other -> new Loads(other).rms(index) / (STEADY_SHARE * rating.amps()));
        return judged(
                Phrase.of("plan_supply_connector", "connector of supply " + supply.name(), "name", supply.name()),
                what,
                figure,
                orLower(remedy, index, milliamps / 1000.0));
    }

    private Verdict onBoard(int index) {
        Wiring.Board board = rig.wiring().board();
        double heat = Math.max(0, board.inputVolts() - rig.stripSupply().volts()) * loads.drawn(index);
        String what = "the board feeds the strip, and gives " + FigureText.amps(loads.drawn(index)) + " with its own "
                + FigureText.amps(board.ownAmps()) + " and may give " + FigureText.amps(board.ratedAmps())
                + (heat > 0 ? "; its regulator turns " + FigureText.watts(heat) + " into heat" : "") + whiteOf(index);
        Phrase remedy = Phrase.of(
                "advice_own_supply",
                "feed the strip from a supply of its own, at least "
                        + FigureText.atLeast(loads.held(index) / STEADY_SHARE)
                        + ", and set wiring.strip.from = \"supply\"",
                "amps",
                FigureText.atLeast(loads.held(index) / STEADY_SHARE));
        Verdict verdict =
                judged(Phrase.of("plan_board", "the board's 5 V pin"), what, index, board.ratedAmps(), remedy);
        return verdict.level() == Verdict.Severity.GOOD && heat > MOST_HEAT_W
                ? new Verdict(
                        Verdict.Severity.CARE,
                        verdict.about(),
                        what,
                        remedy,
                        Figure.atMost(heat, MOST_HEAT_W, "W", "a small regulator, common practice"))
                : verdict;
    }

    private Verdict judged(Phrase subject, String what, int index, double rated, Phrase remedy) {
        Figure figure = Figure.atMost(loads.drawn(index), rated, "A", RULE);
        return judged(subject, what, figure, orLower(remedy, index, STEADY_SHARE * rated - loads.others(index)));
    }

    private static Verdict judged(Phrase subject, String what, Figure figure, Phrase remedy) {
        if (figure.within(STEADY_SHARE)) {
            return new Verdict(Verdict.Severity.GOOD, subject, what, Verdict.FINE, figure);
        }
        return new Verdict(
                figure.within(1) ? Verdict.Severity.CARE : Verdict.Severity.OVER, subject, what, remedy, figure);
    }

    private Phrase orLower(Phrase remedy, int index, double room) {
        boolean feedsStrip = index == rig.setup().stripSupply();
        double dark = feedsStrip ? loads.dark() : 0;
        return room > dark ? lowering(remedy, ceilingKey(rig, index), FigureText.milliampsAtMost(room)) : remedy;
    }

    /** A remedy, or else a lower ceiling. */
    static Phrase lowering(Phrase remedy, String key, String ceiling) {
        return Phrase.of(
                "advice_or_lower",
                remedy.english() + "; or lower " + key + " to " + ceiling,
                "advice",
                remedy,
                "key",
                key,
                "ceiling",
                ceiling);
    }

    /** The key of a supply's ceiling in the file. */
    static String ceilingKey(PlannedLights rig, int index) {
        return index == rig.setup().stripSupply() ? "supply.ceiling_mA" : "its dimmers' ceiling_mA";
    }

    private String gives(int index) {
        double volts = rig.wiring().supplies().get(index).volts();
        return "gives up to " + FigureText.amps(loads.drawn(index)) + " ("
                + FigureText.watts(loads.drawn(index) * volts) + ") at the ceiling" + whiteOf(index) + pulsesOf(index);
    }

    /** What full white would draw, if only the ceiling limits it. */
    private String whiteOf(int index) {
        return loads.full(index) > loads.held(index)
                ? " (full white would be " + FigureText.amps(loads.full(index) + loads.others(index)) + ")"
                : "";
    }

    /** A ceiling holds the mean: lamps draw more during their pulses. */
    private String pulsesOf(int index) {
        return peak(index) > loads.drawn(index) * Loads.WORTH_SAYING
                ? ", in the pulses of its dimmed lights up to " + FigureText.amps(peak(index))
                : "";
    }

    private double peak(int index) {
        return loads.peak(index) + loads.others(index);
    }

    /** The rating that a supply needs: 80 % of it for the mean, all of it for the pulses. */
    double toFit(int index) {
        return Math.max(loads.drawn(index) / STEADY_SHARE, peak(index));
    }
}
