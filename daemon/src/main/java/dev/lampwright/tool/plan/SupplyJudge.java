package dev.lampwright.tool.plan;

import dev.lampwright.tool.plan.Verdict.Figure;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;

/** Judges what each supply has to give, and the connector or header that all of it goes through. */
final class SupplyJudge {
    /** A supply runs at 80 % of its rating at most, all the time (common practice, no source). */
    static final double STEADY_SHARE = 0.8;

    /** The most heat that a small regulator on a board stands all the time (common practice, no source). */
    private static final double MOST_HEAT_W = 1;

    private static final double MICRO = 1e-6;

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
        String subject = "supply " + supply.name();
        String needed = "a supply of " + FigureText.plain(supply.volts()) + " V and at least "
                + FigureText.atLeast(drawn(index) / STEADY_SHARE);
        if (supply.ratedAmps().isEmpty()) {
            String mend = "fit " + needed + " (80 % rule), and tell its rating as amps in [wiring.supplies]";
            Figure figure = Figure.atMost(drawn(index), drawn(index) / STEADY_SHARE, "A");
            return new Verdict(Verdict.Severity.OPEN, subject, gives(index) + "; its rating is not told", mend, figure);
        }
        double rated = supply.ratedAmps().getAsDouble();
        String what = gives(index) + " and is rated " + FigureText.amps(rated) + ", "
                + FigureText.percent(drawn(index) / rated) + " of it";
        return judged(subject, what, index, rated, "fit " + needed);
    }

    private Verdict onConnector(int index, Wiring.Supply supply, double rated) {
        String what = "everything on " + supply.name() + " goes through it, " + FigureText.amps(drawn(index)) + " and "
                + FigureText.watts(drawn(index) * supply.volts()) + " at " + FigureText.plain(supply.volts())
                + " V, and it is rated " + FigureText.amps(rated) + whiteOf(index);
        String mend = "wire the lights to the supply itself, or through a connector of at least "
                + FigureText.atLeast(drawn(index) / STEADY_SHARE);
        return judged("connector of supply " + supply.name(), what, index, rated, mend);
    }

    private Verdict onBoard(int index) {
        Wiring.Board board = rig.wiring().board();
        double heat = Math.max(0, board.inputVolts() - rig.stripSupply().volts()) * drawn(index);
        String what = "the strip hangs on the board, which gives " + FigureText.amps(drawn(index)) + " with its own "
                + FigureText.amps(board.ownAmps()) + " and may give " + FigureText.amps(board.ratedAmps())
                + (heat > 0 ? "; its regulator turns " + FigureText.watts(heat) + " into heat" : "") + whiteOf(index);
        String mend = "feed the strip from a supply of its own, at least "
                + FigureText.atLeast(loads.held(index) / STEADY_SHARE) + ", and set wiring.strip.from = \"supply\"";
        Verdict verdict = judged("the board's 5 V pin", what, index, board.ratedAmps(), mend);
        return verdict.level() == Verdict.Severity.GOOD && heat > MOST_HEAT_W
                ? new Verdict(
                        Verdict.Severity.CARE, verdict.subject(), what, mend, Figure.atMost(heat, MOST_HEAT_W, "W"))
                : verdict;
    }

    private Verdict judged(String subject, String what, int index, double rated, String mend) {
        Figure figure = Figure.atMost(drawn(index), rated, "A");
        if (figure.used() <= STEADY_SHARE) {
            return new Verdict(Verdict.Severity.GOOD, subject, what, "", figure);
        }
        return new Verdict(
                figure.used() > 1 ? Verdict.Severity.OVER : Verdict.Severity.CARE,
                subject,
                what,
                mend + ceilingFor(index, rated),
                figure);
    }

    private String ceilingFor(int index, double rated) {
        double room = STEADY_SHARE * rated - loads.others(index);
        boolean feedsStrip = index == rig.setup().stripSupply();
        double dark = feedsStrip ? rig.setup().pixels() * rig.setup().darkMicroamps() * MICRO : 0;
        return room > dark
                ? "; or lower " + (feedsStrip ? "supply.ceiling_mA" : "its dimmers' ceiling_mA") + " to "
                        + FigureText.milliampsAtMost(room)
                : "";
    }

    private String gives(int index) {
        double volts = rig.wiring().supplies().get(index).volts();
        return "gives up to " + FigureText.amps(drawn(index)) + " (" + FigureText.watts(drawn(index) * volts)
                + ") at the ceiling" + whiteOf(index);
    }

    /** What full white would take, where only the ceiling holds it back. */
    private String whiteOf(int index) {
        return loads.full(index) > loads.held(index)
                ? " (full white would be " + FigureText.amps(loads.full(index) + loads.others(index)) + ")"
                : "";
    }

    private double drawn(int index) {
        return loads.held(index) + loads.others(index);
    }
}
