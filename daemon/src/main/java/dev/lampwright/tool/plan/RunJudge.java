package dev.lampwright.tool.plan;

import dev.lampwright.tool.plan.Verdict.Figure;
import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Judges one wire to a light: its warmth, its connector, its fuse, and what is lost on it. */
final class RunJudge {
    /** Most that may be lost on the way to a plain light, as a share of the voltage (common practice, no source). */
    private static final double LOST_SHARE = 0.05;

    private final WireRun run;
    private final Wiring.Supply supply;
    private final Wire wire;

    RunJudge(WireRun run, Wiring.Supply supply) {
        this.run = run;
        this.supply = supply;
        wire = run.feed().wire();
    }

    /**
     * The verdicts.
     *
     * @param withDrop whether the loss on the wire is to be judged here; that of the strip's wires is judged at the pixels
     */
    List<Verdict> verdicts(boolean withDrop) {
        List<Verdict> verdicts = new ArrayList<>();
        verdicts.add(onWire());
        run.feed().connectorAmps().ifPresent(rated -> verdicts.add(onConnector(rated)));
        OptionalDouble fuse = run.feed().fuseAmps();
        verdicts.add(fuse.isPresent() ? onFuse(fuse.getAsDouble()) : onMissingFuse());
        if (withDrop) {
            verdicts.add(onDrop());
        }
        return verdicts;
    }

    private Verdict onWire() {
        Figure figure = Figure.atMost(run.amps(), wire.bearsAmps(), "A");
        String what = wire.label() + " carries up to " + FigureText.amps(run.amps()) + " and bears "
                + FigureText.amps(wire.bearsAmps()) + " (half of the handbook's figure)";
        return figure.used() <= 1
                ? new Verdict(Verdict.Severity.GOOD, "wire to " + run.name(), what, "", figure)
                : new Verdict(Verdict.Severity.OVER, "wire to " + run.name(), what, thickerFor(run.amps()), figure);
    }

    private String thickerFor(double amps) {
        Optional<Wire> right = wire.thicker().stream()
                .filter(other -> other.bearsAmps() >= amps)
                .findFirst();
        return right.map(other -> "take " + other.label() + ", which bears " + FigureText.amps(other.bearsAmps()))
                .orElse("lower the ceiling, or share the load between several wires, each with its fuse");
    }

    private Verdict onConnector(double rated) {
        Figure figure = Figure.atMost(run.amps(), rated, "A");
        String subject = "connector of " + run.name();
        String what = "carries up to " + FigureText.amps(run.amps()) + ", "
                + FigureText.watts(run.amps() * supply.volts()) + " at " + FigureText.plain(supply.volts())
                + " V, and is rated " + FigureText.amps(rated);
        String mend = "use one of at least " + FigureText.atLeast(run.amps() / SupplyJudge.STEADY_SHARE)
                + ", or lower the ceiling to " + FigureText.milliampsAtMost(SupplyJudge.STEADY_SHARE * rated);
        if (figure.used() > 1) {
            return new Verdict(Verdict.Severity.OVER, subject, what, mend, figure);
        }
        boolean close = figure.used() > SupplyJudge.STEADY_SHARE;
        return new Verdict(
                close ? Verdict.Severity.CARE : Verdict.Severity.GOOD, subject, what, close ? mend : "", figure);
    }

    private Verdict onMissingFuse() {
        OptionalDouble right = run.rightFuse();
        String load = "at least " + FigureText.amps(steady()) + " for a load of " + FigureText.amps(run.amps())
                + " (÷ 0.75), at most " + FigureText.amps(run.bearsAmps()) + " for " + weakest();
        if (right.isEmpty()) {
            return noFuse(load);
        }
        String amps = FigureText.plain(right.getAsDouble()) + " A";
        return new Verdict(
                Verdict.Severity.OPEN,
                "fuse of " + run.name(),
                "none is told; " + load,
                "fit a fuse of " + amps + " at the supply's end, and tell it as fuse_A in [" + run.key() + "]",
                Figure.atMost(steady(), right.getAsDouble(), "A"));
    }

    private Verdict noFuse(String load) {
        return new Verdict(
                Verdict.Severity.CARE,
                "fuse of " + run.name(),
                "no rating fits: " + load,
                thickerFor(FuseRatings.between(run.amps(), Double.MAX_VALUE).orElse(steady()))
                        + (run.bearsAmps() < wire.bearsAmps() ? ", and a stronger connector" : "")
                        + "; or lower the ceiling",
                Figure.atMost(steady(), run.bearsAmps(), "A"));
    }

    private Verdict onFuse(double rated) {
        String subject = "fuse of " + run.name();
        String what = FigureText.plain(rated) + " A for a load of " + FigureText.amps(run.amps()) + ", and " + weakest()
                + " bears " + FigureText.amps(run.bearsAmps());
        if (rated > run.bearsAmps()) {
            return new Verdict(
                    Verdict.Severity.OVER,
                    subject,
                    what + ": the fuse does not guard it",
                    rightFuse(),
                    Figure.atMost(rated, run.bearsAmps(), "A"));
        }
        Figure figure = Figure.atMost(run.amps(), rated, "A");
        if (figure.used() > 1) {
            return new Verdict(Verdict.Severity.OVER, subject, what + ": it will blow", rightFuse(), figure);
        }
        if (figure.used() > FuseRatings.STEADY_SHARE) {
            return new Verdict(
                    Verdict.Severity.CARE, subject, what + ": over 75 % of its rating, it ages", rightFuse(), figure);
        }
        return FuseRatings.has(rated)
                ? new Verdict(Verdict.Severity.GOOD, subject, what, "", figure)
                : new Verdict(Verdict.Severity.CARE, subject, what + ": no preferred rating", rightFuse(), figure);
    }

    private String rightFuse() {
        OptionalDouble right = run.rightFuse();
        return right.isPresent()
                ? "fit a fuse of " + FigureText.plain(right.getAsDouble()) + " A"
                : thickerFor(FuseRatings.between(run.amps(), Double.MAX_VALUE).orElse(steady()))
                        + " and a fuse of at least " + FigureText.amps(steady());
    }

    private Verdict onDrop() {
        Figure figure = Figure.atMost(run.dropVolts(), LOST_SHARE * supply.volts(), "V");
        String what = FigureText.plain(run.metres()) + " m of " + wire.label() + ", there and back, lose "
                + FigureText.volts(run.dropVolts()) + " of " + FigureText.plain(supply.volts()) + " V, "
                + FigureText.percent(run.dropVolts() / supply.volts());
        if (figure.used() <= 1) {
            return new Verdict(Verdict.Severity.GOOD, "voltage at " + run.name(), what, "", figure);
        }
        double ratio = figure.used() * wire.squareMm();
        String mend = wire.thicker().stream()
                .filter(other -> other.squareMm() >= ratio)
                .findFirst()
                .map(other -> "take " + other.label())
                .orElse("shorten the wire");
        return new Verdict(Verdict.Severity.CARE, "voltage at " + run.name(), what, mend, figure);
    }

    private double steady() {
        return run.amps() / FuseRatings.STEADY_SHARE;
    }

    private String weakest() {
        return run.bearsAmps() < wire.bearsAmps() ? "its connector" : wire.label();
    }
}
