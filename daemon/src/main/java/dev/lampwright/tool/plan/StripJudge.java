package dev.lampwright.tool.plan;

import dev.lampwright.tool.plan.Verdict.Figure;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Judges the voltage at the pixels. */
final class StripJudge {
    /** WS2812B datasheet: 5.3 V is the absolute maximum of the supply. */
    private static final double MOST_VOLTS = 5.3;

    private static final double HIGHEST_LOGIC_VOLTS = 6.5;

    private final PlannedLights rig;
    private final StripModel model;
    private final StripCase judged;

    StripJudge(PlannedLights rig, StripModel model, StripCase judged) {
        this.rig = rig;
        this.model = model;
        this.judged = judged;
    }

    /** The verdicts. */
    List<Verdict> verdicts() {
        List<Verdict> verdicts = new ArrayList<>();
        verdicts.add(onLowest());
        double volts = rig.stripSupply().volts();
        if (volts > MOST_VOLTS && volts < HIGHEST_LOGIC_VOLTS) {
            verdicts.add(new Verdict(
                    Verdict.Severity.OVER,
                    "voltage of the strip",
                    FigureText.plain(volts) + " V, and pixels of 5 V bear 5.3 V at most (WS2812B datasheet)",
                    "set the supply to 5 V",
                    Figure.atMost(volts, MOST_VOLTS, "V")));
        }
        return verdicts;
    }

    private Verdict onLowest() {
        Wiring.Strip strip = rig.wiring().strip();
        String subject = "voltage along the strip";
        String where = "lowest at pixel " + judged.lowestAt() + ": " + FigureText.pixelVolts(judged.lowest())
                + " when light that takes " + FigureText.amps(judged.totalAmps()) + " stands where it costs most";
        if (judged.lowest() < strip.leastVolts()) {
            String what = where + "; from pixel " + judged.firstBelow(strip.leastVolts()) + " on, "
                    + judged.countBelow(strip.leastVolts()) + " pixels are below "
                    + FigureText.plain(strip.leastVolts()) + " V and brown out";
            return new Verdict(
                    Verdict.Severity.OVER,
                    subject,
                    what,
                    mend(),
                    Figure.atLeast(judged.lowest(), strip.leastVolts(), "V"));
        }
        Figure figure = Figure.atLeast(judged.lowest(), strip.fullColourVolts(), "V");
        if (judged.lowest() < strip.fullColourVolts()) {
            String what = where + "; from pixel " + judged.firstBelow(strip.fullColourVolts())
                    + " on, " + judged.countBelow(strip.fullColourVolts()) + " pixels are below "
                    + FigureText.plain(strip.fullColourVolts()) + " V and their colour shifts";
            return new Verdict(Verdict.Severity.CARE, subject, what, mend(), figure);
        }
        String what = where + "; colour holds down to " + FigureText.plain(strip.fullColourVolts()) + " V";
        return new Verdict(Verdict.Severity.GOOD, subject, what, "", figure);
    }

    private String mend() {
        Remedies mending = Remedies.of(model, rig, rig.wiring().strip().fullColourVolts());
        List<String> ways = new ArrayList<>();
        if (!mending.points().isEmpty()) {
            ways.add(
                    mending.points().size() == 1
                            ? "let the wire join at pixel " + mending.points().get(0) + " instead"
                            : mending.points().size() + " points do, the fewest: wires of "
                                    + rig.wiring().strip().feed().wire().label() + " to pixels "
                                    + mending.points().stream()
                                            .map(String::valueOf)
                                            .collect(Collectors.joining(", ")));
        }
        mending.wire()
                .ifPresent(wire -> ways.add("take " + wire.label() + " where there is "
                        + rig.wiring().strip().feed().wire().label()));
        return ways.isEmpty()
                ? "shorten the wires, take thicker ones to more points, or lower supply.ceiling_mA"
                : String.join("; or ", ways);
    }
}
