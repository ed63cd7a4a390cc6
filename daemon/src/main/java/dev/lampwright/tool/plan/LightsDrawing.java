package dev.lampwright.tool.plan;

import static dev.lampwright.tool.plan.SvgWriter.Anchor.MIDDLE;
import static dev.lampwright.tool.plan.SvgWriter.Anchor.START;

import dev.lampwright.tool.plan.SvgWriter.At;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** Draws the plain lights, one row each: gate, MOSFET, light, wire, fuse, supply. Rows of one supply are grouped together. */
final class LightsDrawing {
    private static final double ROW = 124;
    private static final double GATE_X = 770;
    private static final double GATE_WIDTH = 132;
    private static final double LIGHT_X = 924;
    private static final double LIGHT_WIDTH = 124;
    private static final double FUSE_X = 1200;
    private static final double GATE_Y = 34;
    private static final double SUPPLY_X = 1300;
    private static final double SUPPLY_WIDTH = 160;
    private static final double BOX = 64;
    /** The largest distance between the lines of two gates. */
    private static final double CORRIDOR = 14;

    private static final double CORRIDORS = 72;
    /** Room for the words below the rows. */
    private static final double NOTE = 24;

    private static final String GROUNDS =
            "Join the − of each of these supplies to the controller's ground: a gate means nothing without it.";

    private final Plan plan;
    private final SvgWriter svg;
    private final PartSymbols parts;
    private final double top;
    private final List<Row> rows;

    /** A light and its wire. */
    private record Row(Wiring.Light light, WireRun run) {}

    LightsDrawing(Plan plan, SvgWriter svg, double top) {
        this.plan = plan;
        this.svg = svg;
        this.top = top;
        parts = new PartSymbols(svg);
        rows = rows(plan);
    }

    /** Draws everything. */
    void draw() {
        for (int i = 0; i < rows.size(); i++) {
            row(rows.get(i), i);
            if (i == 0 || rows.get(i).run.supply() != rows.get(i - 1).run.supply()) {
                supply(i);
            }
        }
        if (!rows.isEmpty()) {
            svg.text(GATE_X, top + ROW * rows.size() + 12, START, PictureStyle.SMALL, PictureStyle.TEXT, GROUNDS);
        }
    }

    /** Where the drawing ends. */
    double bottom() {
        return top + ROW * rows.size() + (rows.isEmpty() ? 0 : NOTE);
    }

    private static List<Row> rows(Plan plan) {
        Wiring wiring = plan.rig().wiring();
        int strips = wiring.strip().points().size();
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < wiring.lights().size(); i++) {
            rows.add(new Row(wiring.lights().get(i), plan.runs().get(strips + i)));
        }
        rows.sort(Comparator.comparingInt(row -> row.run.supply()));
        return rows;
    }

    private void row(Row row, int index) {
        double y = top + ROW * index;
        double plus = y + 14;
        double minus = y + BOX + 16;
        gate(row.light, index, y);
        parts.box(
                new At(LIGHT_X, y),
                LIGHT_WIDTH,
                BOX,
                PictureStyle.LIGHT,
                row.light.name(),
                List.of(FigureText.amps(fullAmps(row)) + " at full"));
        svg.line(PictureStyle.PLUS, PictureStyle.WIRE, new At(LIGHT_X + LIGHT_WIDTH, plus), new At(SUPPLY_X, plus));
        svg.line(PictureStyle.MINUS, PictureStyle.WIRE, new At(GATE_X + GATE_WIDTH, plus), new At(LIGHT_X, plus));
        svg.line(
                PictureStyle.MINUS,
                PictureStyle.WIRE,
                new At(GATE_X + GATE_WIDTH / 2, y + BOX),
                new At(GATE_X + GATE_WIDTH / 2, minus),
                new At(SUPPLY_X, minus));
        parts.fuse(FUSE_X, plus, row.run);
        double left = LIGHT_X + LIGHT_WIDTH + 8;
        svg.text(left, plus + 27, START, PictureStyle.SMALL, PictureStyle.TEXT, PartSymbols.wire(row.run));
        svg.text(left, plus + 44, START, PictureStyle.SMALL, PictureStyle.FAINT, PartSymbols.connector(row.run));
    }

    private void gate(Wiring.Light light, int index, double y) {
        double step = Math.min(CORRIDOR, CORRIDORS / rows.size());
        double corridor = GATE_X - 14 - step * index;
        double from = top + 24 + step * index;
        svg.line(
                PictureStyle.DATA,
                2,
                new At(SignalDrawing.outputs(), from),
                new At(corridor, from),
                new At(corridor, y + GATE_Y),
                new At(GATE_X, y + GATE_Y));
        String outputs = light.outputs().stream()
                .map(plan.rig().wiring().board().kind()::dimmerPin)
                .collect(Collectors.joining(", "));
        List<String> lines = List.of("from " + outputs, "10 kΩ to −");
        parts.box(new At(GATE_X, y), GATE_WIDTH, BOX, PictureStyle.BOARD, gates(light), lines);
    }

    private static String gates(Wiring.Light light) {
        return light.outputs().size() == 1 ? "MOSFET" : light.outputs().size() + " MOSFETs";
    }

    private double fullAmps(Row row) {
        return new Loads(plan.rig()).light(row.light);
    }

    private void supply(int first) {
        int index = rows.get(first).run.supply();
        long count = rows.stream().filter(row -> row.run.supply() == index).count();
        Wiring.Supply supply = plan.rig().wiring().supplies().get(index);
        List<String> lines = new ArrayList<>();
        if (index == plan.rig().setup().stripSupply()) {
            lines.addAll(List.of("the same as the", "strip's, above"));
        } else {
            lines.addAll(PartSymbols.supply(plan, index));
            lines.add("mains: electrician only");
        }
        double height = ROW * count - 10;
        parts.box(
                new At(SUPPLY_X, top + ROW * first),
                SUPPLY_WIDTH,
                height,
                PictureStyle.SUPPLY,
                PartSymbols.name(supply),
                lines);
        svg.text(SUPPLY_X - 8, top + ROW * first + 10, MIDDLE, PictureStyle.SMALL, PictureStyle.PLUS, "+");
        svg.text(SUPPLY_X - 8, top + ROW * first + BOX + 30, MIDDLE, PictureStyle.SMALL, PictureStyle.MINUS, "−");
    }
}
