package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/** The plan for the terminal. */
public final class PlanText {
    private static final int WIDTH = 100;
    private static final int INDENT = 9;

    private final Plan plan;
    private final List<String> lines = new ArrayList<>();

    private PlanText(Plan plan) {
        this.plan = plan;
    }

    /**
     * The plan in lines.
     *
     * @param plan the plan
     * @return tables and words, at most 100 characters wide unless a name is very long
     */
    public static List<String> of(Plan plan) {
        PlanText text = new PlanText(plan);
        text.lines.add("Electrical plan of " + plan.rig().name());
        text.verdicts();
        text.demand();
        text.connectors();
        text.wires();
        text.strip();
        text.defaults();
        text.cautions();
        return List.copyOf(text.lines);
    }

    private void verdicts() {
        heading("Verdicts, the worst first");
        for (Verdict verdict : plan.verdicts()) {
            String level = pad(verdict.level().name(), INDENT);
            wrapped(level + verdict.subject() + ": " + verdict.what() + margin(verdict));
            if (!verdict.mend().isEmpty()) {
                wrapped(" ".repeat(INDENT) + "→ " + verdict.mend());
            }
        }
    }

    private static String margin(Verdict verdict) {
        return switch (verdict.level()) {
            case OPEN -> "";
            default -> " [margin " + Figures.percent(verdict.figure().margin()) + "]";
        };
    }

    private void demand() {
        heading("Demand of each supply");
        Columns columns = new Columns("", "supply", "mean A", "peak A", "mean W", "peak W", "");
        for (Demand demand : plan.demands()) {
            for (int i = 0; i < demand.draws().size(); i++) {
                Wiring.Supply supply = plan.rig().wiring().supplies().get(i);
                Draw draw = demand.draws().get(i);
                columns.row(
                        i == 0 ? demand.name() : "",
                        supply.name(),
                        Figures.fixed(draw.meanAmps(), 2),
                        Figures.fixed(draw.peakAmps(), 2),
                        Figures.fixed(draw.meanAmps() * supply.volts(), 1),
                        Figures.fixed(draw.peakAmps() * supply.volts(), 1),
                        draw.dimmed() ? "dimmed to the ceiling" : "");
            }
        }
        lines.addAll(columns.lines());
    }

    private void connectors() {
        heading("Demand at each connector, mean / peak A (peak W)");
        Columns columns = new Columns(row("", run -> run.name().replace("the strip at ", "")));
        for (Demand demand : plan.demands()) {
            columns.row(row(demand.name(), run -> {
                Draw draw = demand.connectors().get(plan.runs().indexOf(run));
                double volts = plan.rig().wiring().supplies().get(run.supply()).volts();
                return Figures.fixed(draw.meanAmps(), 2) + " / " + Figures.fixed(draw.peakAmps(), 2) + " ("
                        + Figures.fixed(draw.peakAmps() * volts, 1) + ")";
            }));
        }
        columns.row(row("rating", PlanText::connector));
        columns.row(row("margin", PlanText::connectorMargin));
        lines.addAll(columns.lines());
    }

    private String[] row(String name, Function<Run, String> cell) {
        return Stream.concat(Stream.of(name), plan.runs().stream().map(cell)).toArray(String[]::new);
    }

    private static String connector(Run run) {
        return run.feed().connectorAmps().isPresent()
                ? Figures.plain(run.feed().connectorAmps().getAsDouble())
                : Figures.atLeast(run.amps() / SupplyJudge.STEADY_SHARE) + " to fit";
    }

    private static String connectorMargin(Run run) {
        OptionalDouble rated = run.feed().connectorAmps();
        return rated.isPresent()
                ? Figures.percent(1 - run.amps() / rated.getAsDouble())
                : Figures.percent(1 - SupplyJudge.STEADY_SHARE);
    }

    private void wires() {
        heading("Wires, each there and back");
        Columns columns = new Columns("to", "wire", "m", "load A", "bears A", "fuse A", "lost V");
        for (Run run : plan.runs()) {
            columns.row(
                    run.name(),
                    run.feed().wire().label(),
                    Figures.plain(run.metres()),
                    Figures.fixed(run.amps(), 2),
                    Figures.fixed(run.feed().wire().bearsAmps(), 2),
                    run.fuse().isPresent() ? Figures.plain(run.fuse().getAsDouble()) + fuseNote(run) : "none fits",
                    Figures.fixed(run.dropVolts(), 2));
        }
        lines.addAll(columns.lines());
    }

    private static String fuseNote(Run run) {
        return run.feed().fuseAmps().isPresent() ? "" : " to fit";
    }

    private void strip() {
        heading("Voltage along the strip, in V");
        Columns columns = new Columns("load", "A", "pixel 0", "middle", "last pixel", "lowest", "at pixel");
        for (StripCase each : plan.cases()) {
            double[] volts = each.volts();
            columns.row(
                    each.name(),
                    Figures.fixed(each.totalAmps(), 2),
                    pixel(volts[0]),
                    pixel(volts[volts.length / 2]),
                    pixel(volts[volts.length - 1]),
                    pixel(each.lowest()),
                    Integer.toString(each.lowestAt()));
        }
        lines.addAll(columns.lines());
    }

    private static String pixel(double volts) {
        return volts < 0 ? "none" : Figures.fixed(volts, 2);
    }

    private void defaults() {
        if (plan.rig().wiring().defaults().isEmpty()) {
            return;
        }
        heading("Not told, and taken as");
        plan.rig().wiring().defaults().forEach((key, value) -> lines.add("  " + key + " = " + value));
    }

    private void cautions() {
        heading("Cautions");
        Cautions.ALL.forEach(caution -> wrapped("  * " + caution));
    }

    private void heading(String heading) {
        lines.add("");
        lines.add(heading.toUpperCase(Locale.ROOT));
    }

    private void wrapped(String text) {
        int indent = text.startsWith("  *") ? 4 : INDENT;
        lines.addAll(LineBreaker.wrapped(text, WIDTH, indent));
    }

    private static String pad(String text, int width) {
        return text + " ".repeat(Math.max(1, width - text.length()));
    }
}
