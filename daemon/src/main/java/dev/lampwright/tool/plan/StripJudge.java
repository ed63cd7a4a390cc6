package dev.lampwright.tool.plan;

import dev.lampwright.phrase.Phrase;
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

    private static final String PIXELS_PER_M = "wiring.strip.pixels_per_m";

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
        if (rig.wiring().defaults().containsKey(PIXELS_PER_M)
                && rig.stripSupply().volts() > SignalJudge.DataLevel.HIGHEST_OWN_VOLTS) {
            verdicts.add(onDensity());
        }
        double volts = rig.stripSupply().volts();
        if (volts > MOST_VOLTS && volts < HIGHEST_LOGIC_VOLTS) {
            verdicts.add(new Verdict(
                    Verdict.Severity.OVER,
                    Phrase.of("plan_strip_voltage", "voltage of the strip"),
                    FigureText.plain(volts) + " V, and pixels of 5 V take 5.3 V at most (WS2812B datasheet)",
                    "set the supply to 5 V",
                    Figure.atMost(volts, MOST_VOLTS, "V", "WS2812B datasheet")));
        }
        return verdicts;
    }

    private Verdict onDensity() {
        double pixels = rig.wiring().strip().pixelsPerMetre();
        return new Verdict(
                Verdict.Severity.OPEN,
                Phrase.of("plan_strip_length", "length of the strip"),
                "the file does not say how many pixels there are per metre, so " + FigureText.plain(pixels)
                        + " are assumed; above 5.5 V a group of three or six LEDs that light up together is one pixel",
                "count the groups per metre, and set pixels_per_m in [wiring.strip] to that",
                Figure.atLeast(pixels, pixels, "pixels per metre", "assumed"));
    }

    private Verdict onLowest() {
        Wiring.Strip strip = rig.wiring().strip();
        Phrase subject = Phrase.of("plan_along", "voltage along the strip");
        String source =
                rig.stripSupply().volts() <= MOST_VOLTS ? "WS2812B datasheet" : "a share of the voltage, assumed";
        String where = "lowest at pixel " + judged.lowestAt() + ": " + FigureText.pixelVolts(judged.lowest())
                + " when light that takes " + FigureText.amps(judged.totalAmps())
                + " is where it costs most, with the supply "
                + FigureText.percent(rig.stripSupply().tolerance())
                + " low";
        if (judged.lowest() < strip.leastVolts()) {
            String what = where + "; from pixel " + judged.firstBelow(strip.leastVolts()) + " on, "
                    + judged.countBelow(strip.leastVolts()) + " pixels are below "
                    + FigureText.plain(strip.leastVolts()) + " V and brown out";
            return new Verdict(
                    Verdict.Severity.OVER,
                    subject,
                    what,
                    remedy(),
                    Figure.atLeast(judged.lowest(), strip.leastVolts(), "V", source));
        }
        Figure figure = Figure.atLeast(judged.lowest(), strip.fullColourVolts(), "V", source);
        if (judged.lowest() < strip.fullColourVolts()) {
            String what = where + "; from pixel " + judged.firstBelow(strip.fullColourVolts())
                    + " on, " + judged.countBelow(strip.fullColourVolts()) + " pixels are below "
                    + FigureText.plain(strip.fullColourVolts()) + " V and their colour shifts";
            return new Verdict(Verdict.Severity.CARE, subject, what, remedy(), figure);
        }
        String what = where + "; colour holds down to " + FigureText.plain(strip.fullColourVolts()) + " V";
        return new Verdict(Verdict.Severity.GOOD, subject, what, "", figure);
    }

    private String remedy() {
        Remedies remedies = Remedies.of(model, rig, rig.wiring().strip().fullColourVolts());
        List<String> ways = new ArrayList<>();
        if (!remedies.points().isEmpty()) {
            ways.add(
                    remedies.points().size() == 1
                            ? "connect the wire at pixel " + remedies.points().get(0) + " instead"
                            : remedies.points().size()
                                    + " points are enough, the fewest that were found: wires of "
                                    + rig.wiring().strip().feed().wire().label() + " to pixels "
                                    + remedies.points().stream()
                                            .map(String::valueOf)
                                            .collect(Collectors.joining(", ")));
        }
        remedies.wire()
                .ifPresent(wire -> ways.add("take " + wire.label() + " where there is "
                        + rig.wiring().strip().feed().wire().label()));
        remedies.both()
                .ifPresent(both -> ways.add(
                        "take " + both.wire().label() + " to " + both.points().size() + " points, pixels "
                                + both.points().stream().map(String::valueOf).collect(Collectors.joining(", "))));
        return ways.isEmpty()
                ? "shorten the wires, use thicker ones to more points, or lower supply.ceiling_mA"
                : String.join("; or ", ways);
    }
}
