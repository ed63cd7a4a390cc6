package dev.lampwright.tool.plan;

import dev.lampwright.tool.plan.Verdict.Figure;
import dev.lampwright.tool.plan.Verdict.Severity;
import dev.lampwright.wiring.Rating;
import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Judges one wire to a light: its temperature, its connector, its fuse, and the voltage lost on it. */
final class RunJudge {
    /** The highest acceptable loss on the way to a plain light, as a share of the voltage (common practice, no source). */
    private static final double LOST_SHARE = 0.05;

    private final PlannedLights rig;
    private final WireRun run;
    private final int index;
    private final Wiring.Supply supply;
    private final Wire wire;

    /**
     * Judges a wire.
     *
     * @param rig the rig it is in
     * @param run the wire
     * @param index its place among {@link WireRuns#all}
     */
    RunJudge(PlannedLights rig, WireRun run, int index) {
        this.rig = rig;
        this.run = run;
        this.index = index;
        supply = rig.wiring().supplies().get(run.supply());
        wire = run.feed().wire();
    }

    /**
     * How much of what a part carries may flow all the time: for connectors 0.8, the factor from base curve to derating curve in IEC
     * 60512-5-2.
     */
    static double goodShare(WireRun.Kind kind) {
        return kind == WireRun.Kind.CONNECTOR ? SupplyJudge.STEADY_SHARE : 1;
    }

    /**
     * The verdicts.
     *
     * @param withDrop whether to judge the loss on the wire here; that of the strip's wires is judged at the pixels
     */
    List<Verdict> verdicts(boolean withDrop) {
        List<Verdict> verdicts = new ArrayList<>();
        verdicts.add(onWire());
        run.parts().stream()
                .filter(part -> part.kind() == WireRun.Kind.CONNECTOR)
                .forEach(part -> verdicts.add(onConnector(part.rating())));
        OptionalDouble fuse = run.feed().fuseAmps();
        verdicts.add(fuse.isPresent() ? onFuse(fuse.getAsDouble()) : onMissingFuse());
        run.fuse().ifPresent(rated -> verdicts.add(onShort(rated)));
        if (withDrop) {
            verdicts.add(onDrop());
        }
        return verdicts;
    }

    private Verdict onWire() {
        Figure figure =
                Figure.atMost(run.rmsAmps(), run.wire().amps(), "A", run.wire().source());
        String what = wire.label() + " carries up to " + load() + " and may carry "
                + FigureText.amps(run.wire().amps());
        return figure.within(1)
                ? new Verdict(Severity.GOOD, "wire to " + run.name(), what, "", figure)
                : new Verdict(
                        Severity.OVER,
                        "wire to " + run.name(),
                        what,
                        thickerFor(run.rmsAmps()) + orLower(run.wire().amps()),
                        figure);
    }

    /** The current, in words: for pulses the RMS with its components. */
    private String load() {
        if (run.rmsAmps() <= run.amps() * Loads.WORTH_SAYING) {
            return FigureText.amps(run.rmsAmps());
        }
        return FigureText.amps(run.rmsAmps()) + " RMS (pulses of " + FigureText.amps(run.pulseAmps()) + ", "
                + FigureText.amps(run.amps()) + " on average"
                + (isStrip() ? "; that pixels pulse together is assumed" : "") + ")";
    }

    private boolean isStrip() {
        return run.key().equals(WireRuns.STRIP_KEY);
    }

    private String thickerFor(double amps) {
        Optional<Wire> right = thicker(other -> carries(other).amps() >= amps);
        return right.map(other -> "take " + other.label() + ", which may carry "
                        + FigureText.amps(carries(other).amps()))
                .orElse(
                        run.wire().amps() > 0
                                ? "share the load between several wires, each with its fuse"
                                : "use wire with insulation for more than "
                                        + FigureText.plain(rig.wiring().around().ambientC())
                                        + " °C, and set insulation_C in [wiring]");
    }

    private Optional<Wire> thicker(Predicate<Wire> does) {
        return wire.thicker().stream().filter(does).findFirst();
    }

    private Rating carries(Wire other) {
        return other.carries(rig.wiring().around());
    }

    /** Which ceiling would be enough, if any. */
    private String orLower(double goodAmps) {
        int milliamps = new CeilingFinder(rig)
                .most(run.supply(), other -> new WireRuns(other, new StripModel(other)).rms(index) / goodAmps);
        double dark = run.supply() == rig.setup().stripSupply() ? new Loads(rig).dark() : 0;
        return milliamps > 1000 * dark
                ? "; or lower " + SupplyJudge.ceilingKey(rig, run.supply()) + " to " + milliamps + " mA"
                : "";
    }

    private Verdict onConnector(Rating rating) {
        Figure figure = Figure.atMost(run.rmsAmps(), rating.amps(), "A", rating.source());
        String subject = "connector of " + run.name();
        String what = "carries up to " + load() + ", " + FigureText.watts(run.amps() * supply.volts()) + " at "
                + FigureText.plain(supply.volts()) + " V, and may carry " + FigureText.amps(rating.amps());
        if (figure.within(SupplyJudge.STEADY_SHARE)) {
            return new Verdict(Severity.GOOD, subject, what, "", figure);
        }
        String remedy = connectorFor(run.rmsAmps() / SupplyJudge.STEADY_SHARE)
                + orLower(SupplyJudge.STEADY_SHARE * rating.amps());
        return new Verdict(figure.within(1) ? Severity.CARE : Severity.OVER, subject, what, remedy, figure);
    }

    /** A connector that can carry this much in the place of this one. */
    private String connectorFor(double amps) {
        double share = rig.wiring().around().connector(1).amps();
        return share > 0
                ? "use a connector rated at least " + FigureText.atLeast(amps / share)
                : "use a connector made for more than "
                        + FigureText.plain(rig.wiring().around().ambientC())
                        + " °C, and set connector_C in [wiring]";
    }

    private Verdict onMissingFuse() {
        OptionalDouble right = run.rightFuse();
        String load = "at least " + FigureText.amps(steady()) + " for a load of " + FigureText.amps(run.rmsAmps())
                + " (÷ 0.75), at most " + FigureText.amps(bears()) + " for "
                + run.weakest().name();
        if (right.isEmpty()) {
            return new Verdict(
                    Severity.CARE,
                    "fuse of " + run.name(),
                    "no rating fits: " + load,
                    strongerFor(FuseRatings.forLoad(run.rmsAmps()))
                            + orLower(FuseRatings.STEADY_SHARE
                                    * FuseRatings.atMost(bears()).orElse(0)),
                    Figure.atMost(steady(), bears(), "A", run.weakest().rating().source()));
        }
        String amps = FigureText.plain(right.getAsDouble()) + " A";
        return new Verdict(
                Severity.OPEN,
                "fuse of " + run.name(),
                "the file has none; " + load,
                "fit a slow fuse of " + amps + " for at least " + FigureText.plain(supply.volts())
                        + " V of direct current at the supply's end, and enter it as fuse_A in [" + run.key() + "]",
                Figure.atMost(steady(), right.getAsDouble(), "A", "75 % of its rating, common practice"));
    }

    /** How to make all parts behind a fuse strong enough for it. */
    private String strongerFor(double fuseAmps) {
        StripModel model = new StripModel(rig);
        return run.parts().stream()
                .filter(part -> part.rating().amps() < fuseAmps)
                .map(part -> switch (part.kind()) {
                    case WIRE -> thickerFor(fuseAmps);
                    case CONNECTOR -> connectorFor(fuseAmps);
                    case COPPER -> CopperJudge.words(rig, model).orElse("share the load between several strips");
                })
                .collect(Collectors.joining(", and "));
    }

    private Verdict onFuse(double rated) {
        String subject = "fuse of " + run.name();
        String what = FigureText.plain(rated) + " A for a load of " + load() + ", and "
                + run.weakest().name() + " may carry " + FigureText.amps(bears());
        Figure guarded =
                Figure.atMost(rated, bears(), "A", run.weakest().rating().source());
        if (!guarded.within(1)) {
            return new Verdict(Severity.OVER, subject, what + ": the fuse does not guard it", rightFuse(), guarded);
        }
        Figure figure = Figure.atMost(run.rmsAmps(), rated, "A", "its rating; 75 % of it is common practice");
        if (!figure.within(1)) {
            return new Verdict(Severity.OVER, subject, what + ": it will blow", rightFuse(), figure);
        }
        if (!figure.within(FuseRatings.STEADY_SHARE)) {
            return new Verdict(
                    Severity.CARE,
                    subject,
                    what + ": more than 75 % of its rating, so it ages",
                    rightFuse() + orLower(FuseRatings.STEADY_SHARE * rated),
                    figure);
        }
        return FuseRatings.has(rated)
                ? new Verdict(Severity.GOOD, subject, what, "", figure)
                : new Verdict(
                        Severity.CARE, subject, what + ": not a rating of " + FuseRatings.SOURCE, rightFuse(), figure);
    }

    private String rightFuse() {
        OptionalDouble right = run.rightFuse();
        double needed = FuseRatings.forLoad(run.rmsAmps());
        return right.isPresent()
                ? "fit a fuse of " + FigureText.plain(right.getAsDouble()) + " A"
                : strongerFor(needed)
                        + (run.weakest().kind() == WireRun.Kind.COPPER
                                ? ""
                                : ", with a fuse of " + FigureText.plain(needed) + " A")
                        + orLower(FuseRatings.STEADY_SHARE
                                * FuseRatings.atMost(bears()).orElse(0));
    }

    /** Whether a short at the far end blows the fuse. */
    private Verdict onShort(double rated) {
        double least = FuseRatings.SURE_TO_BLOW * rated;
        Figure figure = Figure.atLeast(run.shortAmps(), least, "A", "2.1 × its rating, IEC 60127-2, from memory");
        String subject = "short at the end of the wire to " + run.name();
        String what = FigureText.amps(run.shortAmps()) + " could flow" + limited(least) + ", and the fuse of "
                + FigureText.plain(rated) + " A is sure to blow from " + FigureText.amps(least) + " on";
        if (figure.within(1)) {
            return new Verdict(Severity.GOOD, subject, what, "", figure);
        }
        return new Verdict(
                Severity.CARE,
                subject,
                what + ": it may never blow",
                thicker(other -> shorted(other) >= least)
                        .map(other -> "take " + other.label() + ", or shorten the wire")
                        .orElse("shorten the wire"),
                figure);
    }

    /** Switched supplies limit their output to little more than their rating. */
    private String limited(double least) {
        return supply.ratedAmps().orElse(Double.MAX_VALUE) < least
                ? " (unless the supply, rated "
                        + FigureText.amps(supply.ratedAmps().getAsDouble()) + ", limits it or shuts down sooner)"
                : "";
    }

    private double shorted(Wire other) {
        double wireC = rig.wiring().wireC();
        double ohms = supply.leastVolts() / run.shortAmps()
                - wire.loopOhms(run.metres(), wireC)
                + other.loopOhms(run.metres(), wireC);
        return supply.leastVolts() / ohms;
    }

    private Verdict onDrop() {
        double lost = run.dropVolts() + supply.volts() - supply.leastVolts();
        Figure figure =
                Figure.atMost(run.dropVolts(), LOST_SHARE * supply.volts(), "V", "5 % of the voltage, common practice");
        String what = FigureText.plain(run.metres()) + " m of " + wire.label()
                + ", there and back, with contacts and fuse lose " + FigureText.volts(run.dropVolts()) + " of "
                + FigureText.plain(supply.volts()) + " V, " + FigureText.percent(run.dropVolts() / supply.volts())
                + (run.pulseAmps() > run.amps() * Loads.WORTH_SAYING ? ", during each pulse" : "")
                + "; with the supply's tolerance "
                + FigureText.volts(lost) + " may be missing";
        if (figure.within(1)) {
            return new Verdict(Severity.GOOD, "voltage at " + run.name(), what, "", figure);
        }
        double spare = LOST_SHARE * supply.volts() - run.dropVolts() + wireDrop(wire);
        String remedy = thicker(other -> wireDrop(other) <= spare)
                .map(other -> "take " + other.label())
                .orElse("shorten the wire");
        return new Verdict(Severity.CARE, "voltage at " + run.name(), what, remedy, figure);
    }

    private double wireDrop(Wire other) {
        return run.pulseAmps() * other.loopOhms(run.metres(), rig.wiring().wireC());
    }

    private double steady() {
        return run.rmsAmps() / FuseRatings.STEADY_SHARE;
    }

    private double bears() {
        return run.weakest().rating().amps();
    }
}
