package dev.lampwright.tool.plan;

import dev.lampwright.phrase.Phrase;
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

/** Judges one wire to a light: its temperature, its connector, its fuse, and the voltage lost on it. */
final class RunJudge {
    /** The highest acceptable loss on the way to a plain light, as a share of the voltage (common practice, no source). */
    private static final double LOST_SHARE = 0.05;

    private static final Phrase SHORTEN = Phrase.of("advice_shorten", "shorten the wire");
    private static final String FUSE = "plan_fuse";
    private static final String FUSE_OF = "fuse of ";

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
                ? new Verdict(Severity.GOOD, named("plan_wire", "wire to "), what, Verdict.FINE, figure)
                : new Verdict(
                        Severity.OVER,
                        named("plan_wire", "wire to "),
                        what,
                        orLower(thickerFor(run.rmsAmps()), run.wire().amps()),
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

    private Phrase named(String code, String english) {
        return Phrase.of(code, english + run.name(), "name", run.name());
    }

    private Phrase thickerFor(double amps) {
        String ambient = FigureText.plain(rig.wiring().around().ambientC());
        Optional<Wire> right = thicker(other -> carries(other).amps() >= amps);
        return right.map(other -> {
                    String most = FigureText.amps(carries(other).amps());
                    return Phrase.of(
                            "advice_thicker",
                            "take " + other.label() + ", which may carry " + most,
                            "wire",
                            other.label(),
                            "amps",
                            most);
                })
                .orElse(
                        run.wire().amps() > 0
                                ? Phrase.of(
                                        "advice_more_wires", "share the load between several wires, each with its fuse")
                                : Phrase.of(
                                        "advice_insulation",
                                        "use wire with insulation for more than " + ambient
                                                + " °C, and set insulation_C in [wiring]",
                                        "celsius",
                                        ambient));
    }

    private Optional<Wire> thicker(Predicate<Wire> does) {
        return wire.thicker().stream().filter(does).findFirst();
    }

    private Rating carries(Wire other) {
        return other.carries(rig.wiring().around());
    }

    /** Which ceiling would be enough, if any. */
    private Phrase orLower(Phrase remedy, double goodAmps) {
        int milliamps = new CeilingFinder(rig)
                .most(run.supply(), other -> new WireRuns(other, new StripModel(other)).rms(index) / goodAmps);
        double dark = run.supply() == rig.setup().stripSupply() ? new Loads(rig).dark() : 0;
        return milliamps > 1000 * dark
                ? SupplyJudge.lowering(remedy, SupplyJudge.ceilingKey(rig, run.supply()), milliamps + " mA")
                : remedy;
    }

    private Verdict onConnector(Rating rating) {
        Figure figure = Figure.atMost(run.rmsAmps(), rating.amps(), "A", rating.source());
        Phrase subject = named("plan_connector", "connector of ");
        String what = "carries up to " + load() + ", " + FigureText.watts(run.amps() * supply.volts()) + " at "
                + FigureText.plain(supply.volts()) + " V, and may carry " + FigureText.amps(rating.amps());
        if (figure.within(SupplyJudge.STEADY_SHARE)) {
            return new Verdict(Severity.GOOD, subject, what, Verdict.FINE, figure);
        }
        Phrase remedy = orLower(
                connectorFor(run.rmsAmps() / SupplyJudge.STEADY_SHARE), SupplyJudge.STEADY_SHARE * rating.amps());
        return new Verdict(figure.within(1) ? Severity.CARE : Severity.OVER, subject, what, remedy, figure);
    }

    /** A connector that can carry this much in the place of this one. */
    private Phrase connectorFor(double amps) {
        double share = rig.wiring().around().connector(1).amps();
        String ambient = FigureText.plain(rig.wiring().around().ambientC());
        return share > 0
                ? Phrase.of(
                        "advice_connector",
                        "use a connector rated at least " + FigureText.atLeast(amps / share),
                        "amps",
                        FigureText.atLeast(amps / share))
                : Phrase.of(
                        "advice_connector_hot",
                        "use a connector made for more than " + ambient + " °C, and set connector_C in [wiring]",
                        "celsius",
                        ambient);
    }

    private Verdict onMissingFuse() {
        OptionalDouble right = run.rightFuse();
        String load = "at least " + FigureText.amps(steady()) + " for a load of " + FigureText.amps(run.rmsAmps())
                + " (÷ 0.75), at most " + FigureText.amps(bears()) + " for "
                + run.weakest().name();
        if (right.isEmpty()) {
            return new Verdict(
                    Severity.CARE,
                    named(FUSE, FUSE_OF),
                    "no rating fits: " + load,
                    orLower(
                            strongerFor(FuseRatings.forLoad(run.rmsAmps())),
                            FuseRatings.STEADY_SHARE
                                    * FuseRatings.atMost(bears()).orElse(0)),
                    Figure.atMost(steady(), bears(), "A", run.weakest().rating().source()));
        }
        String amps = FigureText.plain(right.getAsDouble()) + " A";
        return new Verdict(
                Severity.OPEN,
                named(FUSE, FUSE_OF),
                "the file has none; " + load,
                Phrase.of(
                        "advice_fuse_open",
                        "fit a slow fuse of " + amps + " for at least " + FigureText.plain(supply.volts())
                                + " V of direct current at the supply's end, and enter it as fuse_A in [" + run.key()
                                + "]",
                        "amps",
                        amps,
                        "volts",
                        FigureText.plain(supply.volts()),
                        "key",
                        run.key()),
                Figure.atMost(steady(), right.getAsDouble(), "A", "75 % of its rating, common practice"));
    }

    /** How to make all parts behind a fuse strong enough for it. */
    private Phrase strongerFor(double fuseAmps) {
        StripModel model = new StripModel(rig);
        List<Phrase> ways = run.parts().stream()
                .filter(part -> part.rating().amps() < fuseAmps)
                .map(part -> switch (part.kind()) {
                    case WIRE -> thickerFor(fuseAmps);
                    case CONNECTOR -> connectorFor(fuseAmps);
                    case COPPER ->
                        Phrase.plain(CopperJudge.words(rig, model).orElse("share the load between several strips"));
                })
                .toList();
        return Phrase.of("advice_all", String.join(", and ", Phrase.english(ways)), "ways", ways);
    }

    private Verdict onFuse(double rated) {
        Phrase subject = named(FUSE, FUSE_OF);
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
                    orLower(rightFuse(), FuseRatings.STEADY_SHARE * rated),
                    figure);
        }
        return FuseRatings.has(rated)
                ? new Verdict(Severity.GOOD, subject, what, Verdict.FINE, figure)
                : new Verdict(
                        Severity.CARE, subject, what + ": not a rating of " + FuseRatings.SOURCE, rightFuse(), figure);
    }

    private Phrase rightFuse() {
        OptionalDouble right = run.rightFuse();
        double needed = FuseRatings.forLoad(run.rmsAmps());
        if (right.isPresent()) {
            String amps = FigureText.plain(right.getAsDouble()) + " A";
            return Phrase.of("advice_fuse", "fit a fuse of " + amps, "amps", amps);
        }
        Phrase stronger = strongerFor(needed);
        String amps = FigureText.plain(needed) + " A";
        Phrase way = run.weakest().kind() == WireRun.Kind.COPPER
                ? stronger
                : Phrase.of(
                        "advice_with_fuse",
                        stronger.english() + ", with a fuse of " + amps,
                        "advice",
                        stronger,
                        "amps",
                        amps);
        return orLower(
                way, FuseRatings.STEADY_SHARE * FuseRatings.atMost(bears()).orElse(0));
    }

    /** Whether a short at the far end blows the fuse. */
    private Verdict onShort(double rated) {
        double least = FuseRatings.SURE_TO_BLOW * rated;
        Figure figure = Figure.atLeast(run.shortAmps(), least, "A", "2.1 × its rating, IEC 60127-2, from memory");
        Phrase subject = named("plan_short", "short at the end of the wire to ");
        String what = FigureText.amps(run.shortAmps()) + " could flow" + limited(least) + ", and the fuse of "
                + FigureText.plain(rated) + " A is sure to blow from " + FigureText.amps(least) + " on";
        if (figure.within(1)) {
            return new Verdict(Severity.GOOD, subject, what, Verdict.FINE, figure);
        }
        return new Verdict(
                Severity.CARE,
                subject,
                what + ": it may never blow",
                thicker(other -> shorted(other) >= least)
                        .map(other -> Phrase.of(
                                "advice_take_or_shorten",
                                "take " + other.label() + ", or shorten the wire",
                                "wire",
                                other.label()))
                        .orElse(SHORTEN),
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
        Phrase subject = named("plan_voltage_at", "voltage at ");
        if (figure.within(1)) {
            return new Verdict(Severity.GOOD, subject, what, Verdict.FINE, figure);
        }
        double spare = LOST_SHARE * supply.volts() - run.dropVolts() + wireDrop(wire);
        Phrase remedy = thicker(other -> wireDrop(other) <= spare)
                .map(other -> Phrase.of("advice_take", "take " + other.label(), "wire", other.label()))
                .orElse(SHORTEN);
        return new Verdict(Severity.CARE, subject, what, remedy, figure);
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
