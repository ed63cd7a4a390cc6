package dev.lampwright.tool.plan;

import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.IntStream;
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
        text.ceilings();
        text.strip();
        text.assumptions();
        text.defaults();
        text.cautions();
        return List.copyOf(text.lines);
    }

    private void verdicts() {
        heading("Verdicts, the worst first");
        for (Verdict verdict : plan.verdicts()) {
            String level = pad(verdict.level().name(), INDENT);
            wrapped(level + verdict.title() + ": " + verdict.what() + " " + verdict.limit());
            if (!verdict.remedy().isEmpty()) {
                wrapped(" ".repeat(INDENT) + "→ " + verdict.remedy());
            }
        }
    }

    private void demand() {
        heading("Demand of each supply");
        Columns columns = new Columns("", "supply", "mean A", "peak A", "mean W", "peak W", "");
        for (Demand demand : plan.demands()) {
            for (int i = 0; i < demand.draws().size(); i++) {
                Wiring.Supply supply = plan.rig().wiring().supplies().get(i);
                Demand.Draw draw = demand.draws().get(i);
                columns.row(
                        i == 0 ? demand.name() : "",
                        supply.name(),
                        FigureText.fixed(draw.meanAmps(), 2),
                        FigureText.fixed(draw.peakAmps(), 2),
                        FigureText.fixed(draw.meanAmps() * supply.volts(), 1),
                        FigureText.fixed(draw.peakAmps() * supply.volts(), 1),
                        draw.dimmed() ? "dimmed to the ceiling" : "");
            }
        }
        lines.addAll(columns.lines());
    }

    private void connectors() {
        heading("Demand at each connector, mean / peak A of the looks (peak W)");
        Columns columns = new Columns(row("", run -> run.name().replace("the strip at ", "")));
        for (Demand demand : plan.demands()) {
            columns.row(row(demand.name(), run -> {
                Demand.Draw draw = demand.connectors().get(plan.runs().indexOf(run));
                double volts = plan.rig().wiring().supplies().get(run.supply()).volts();
                return FigureText.fixed(draw.meanAmps(), 2) + " / " + FigureText.fixed(draw.peakAmps(), 2) + " ("
                        + FigureText.fixed(draw.peakAmps() * volts, 1) + ")";
            }));
        }
        columns.row(row("rating", PlanText::connector));
        columns.row(row("margin", PlanText::connectorMargin));
        lines.addAll(columns.lines());
    }

    private String[] row(String name, Function<WireRun, String> cell) {
        return Stream.concat(Stream.of(name), plan.runs().stream().map(cell)).toArray(String[]::new);
    }

    private static String connector(WireRun run) {
        return run.feed().connectorAmps().isPresent()
                ? FigureText.plain(run.feed().connectorAmps().getAsDouble())
                : FigureText.atLeast(run.rmsAmps() / SupplyJudge.STEADY_SHARE) + " to fit";
    }

    private static String connectorMargin(WireRun run) {
        double used = run.parts().stream()
                .filter(part -> part.kind() == WireRun.Kind.CONNECTOR)
                .mapToDouble(part -> run.rmsAmps() / part.rating().amps())
                .findFirst()
                .orElse(SupplyJudge.STEADY_SHARE);
        return FigureText.percent(1 - used);
    }

    private void wires() {
        heading("Wires, each there and back");
        Columns columns =
                new Columns("to", "wire", "m", "mean A", "RMS A", "pulse A", "may carry A", "fuse A", "lost V");
        for (WireRun run : plan.runs()) {
            columns.row(
                    run.name(),
                    run.feed().wire().label(),
                    FigureText.plain(run.metres()),
                    FigureText.fixed(run.amps(), 2),
                    FigureText.fixed(run.rmsAmps(), 2),
                    FigureText.fixed(run.pulseAmps(), 2),
                    FigureText.fixed(run.weakest().rating().amps(), 2),
                    run.fuse().isPresent() ? FigureText.plain(run.fuse().getAsDouble()) + fuseNote(run) : "none fits",
                    FigureText.fixed(run.dropVolts(), 2));
        }
        lines.addAll(columns.lines());
    }

    private static String fuseNote(WireRun run) {
        return run.feed().fuseAmps().isPresent() ? "" : " to fit";
    }

    private void ceilings() {
        if (plan.ceilings().isEmpty()) {
            return;
        }
        heading("Ceilings of the mean current: what is set, and the most that the weakest part allows");
        Columns columns = new Columns("supply", "set mA", "at most mA", "weakest part");
        plan.ceilings()
                .forEach(each -> columns.row(
                        plan.rig().wiring().supplies().get(each.supply()).name(),
                        Integer.toString(plan.rig().setup().ceilingsMilliamps().get(each.supply())),
                        Integer.toString(each.milliamps()),
                        each.part()));
        lines.addAll(columns.lines());
    }

    private void assumptions() {
        heading("What is assumed throughout");
        Assumptions.of(plan).forEach(line -> wrapped("  * " + line));
    }

    private void strip() {
        heading("Voltage along the strip, in V");
        Columns columns = new Columns("load", "A", "pixel 0", "middle", "last pixel", "lowest", "at pixel");
        for (StripCase each : plan.cases()) {
            double[] volts = each.volts();
            columns.row(
                    each.name(),
                    FigureText.fixed(each.totalAmps(), 2),
                    pixel(volts[0]),
                    pixel(volts[volts.length / 2]),
                    pixel(volts[volts.length - 1]),
                    pixel(each.lowest()),
                    Integer.toString(each.lowestAt()));
        }
        lines.addAll(columns.lines());
    }

    private static String pixel(double volts) {
        return volts < 0 ? "none" : FigureText.fixed(volts, 2);
    }

    private void defaults() {
        if (plan.rig().wiring().defaults().isEmpty()) {
            return;
        }
        heading("Not in the file, so assumed");
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

    /** A table in the terminal: the first column to the left, numbers to the right. */
    static final class Columns {
        private static final String GAP = "  ";

        private final List<String[]> rows = new ArrayList<>();

        Columns(String... headings) {
            rows.add(headings);
        }

        /**
         * Adds a row.
         *
         * @param cells one per heading
         */
        void row(String... cells) {
            rows.add(cells);
        }

        /** The table, headings first. */
        List<String> lines() {
            int[] widths =
                    IntStream.range(0, rows.get(0).length).map(this::width).toArray();
            return rows.stream().map(row -> line(row, widths)).toList();
        }

        private int width(int column) {
            return rows.stream().mapToInt(row -> row[column].length()).max().orElse(0);
        }

        private static String line(String[] row, int[] widths) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < row.length; i++) {
                String blanks = " ".repeat(widths[i] - row[i].length());
                boolean number =
                        i > 0 && (row[i].isEmpty() || Character.isDigit(row[i].charAt(0)) || row[i].charAt(0) == '-');
                line.append(GAP).append(number ? blanks + row[i] : row[i] + blanks);
            }
            return line.toString().stripTrailing();
        }
    }
}
