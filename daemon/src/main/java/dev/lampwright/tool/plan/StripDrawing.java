package dev.lampwright.tool.plan;

import static dev.lampwright.tool.plan.SvgWriter.Anchor.END;
import static dev.lampwright.tool.plan.SvgWriter.Anchor.MIDDLE;
import static dev.lampwright.tool.plan.SvgWriter.Anchor.START;

import dev.lampwright.tool.plan.SvgWriter.At;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws the strip and its power: the supply to the left, a fuse and a pair of wires for each point. Wires to farther points are higher, so
 * none crosses another.
 */
final class StripDrawing {
    private static final double SUPPLY_WIDTH = 200;
    private static final double FUSE_X = 270;
    private static final double ROW = 62;
    private static final double STRIP_X = 810;
    private static final double STRIP_WIDTH = 620;
    private static final double STRIP_HEIGHT = 44;
    private static final double PAIR = 16;
    /** Distance from the strip's drawing to the signals below it. */
    static final double SIGNALS_BELOW = 60;

    private static final double TERMINAL_GAP = 18;
    private static final double ABOVE_STRIP = 70;
    /** Distance from the ends of the strip to its first and last pixel. */
    private static final double INSET = 30;

    private static final double PIXELS_WIDTH = STRIP_WIDTH - 2 * INSET;
    private static final int MOST_SQUARES = 120;

    private final Plan plan;
    private final SvgWriter svg;
    private final PartSymbols parts;
    private final List<WireRun> runs;
    private final double top;

    StripDrawing(Plan plan, SvgWriter svg, double top) {
        this.plan = plan;
        this.svg = svg;
        this.top = top;
        parts = new PartSymbols(svg);
        runs = plan.runs().subList(0, plan.rig().wiring().strip().points().size());
    }

    /** Draws everything. */
    void draw() {
        supply();
        for (int i = 0; i < runs.size(); i++) {
            feed(i);
        }
        capacitor();
        strip();
        computer();
    }

    /** Height of the strip's data. */
    double dataY() {
        return stripY() + STRIP_HEIGHT / 2;
    }

    /** Height of the strip's ground next to its data. */
    double groundY() {
        return stripY() + STRIP_HEIGHT - 8;
    }

    /** The strip's near end. */
    static double nearEnd() {
        return STRIP_X;
    }

    /** Where the drawing ends. */
    double bottom() {
        return stripY() + STRIP_HEIGHT + 40;
    }

    private double stripY() {
        return top + 30 + ROW * runs.size() + ABOVE_STRIP;
    }

    private void supply() {
        boolean fromBoard = plan.rig().wiring().strip().fromBoard();
        int index = plan.rig().setup().stripSupply();
        Wiring.Supply supply = plan.rig().stripSupply();
        String name = fromBoard ? "The board's 5 V pin" : "Supply " + PartSymbols.name(supply);
        List<String> lines = new ArrayList<>(fromBoard ? List.of() : PartSymbols.supply(plan, index));
        lines.add(fromBoard ? "see the verdicts" : "mains: electrician only");
        parts.box(new At(PictureStyle.MARGIN, top), SUPPLY_WIDTH, supplyHeight(), PictureStyle.SUPPLY, name, lines);
    }

    private double supplyHeight() {
        return Math.max(124, ROW * runs.size() + 10);
    }

    private void feed(int index) {
        WireRun run = runs.get(index);
        double minusY = top + 34 + ROW * (runs.size() - 1 - index);
        double plusY = minusY + TERMINAL_GAP;
        double x = pointX(index);
        double left = PictureStyle.MARGIN + SUPPLY_WIDTH;
        svg.line(
                PictureStyle.MINUS,
                PictureStyle.WIRE,
                new At(left, minusY),
                new At(x + PAIR, minusY),
                new At(x + PAIR, stripY()));
        svg.line(
                PictureStyle.PLUS,
                PictureStyle.WIRE,
                new At(left, plusY),
                new At(x - PAIR, plusY),
                new At(x - PAIR, stripY()));
        svg.text(left + 6, minusY - 4, START, PictureStyle.SMALL, PictureStyle.MINUS, "−");
        svg.text(left + 6, plusY + 14, START, PictureStyle.SMALL, PictureStyle.PLUS, "+");
        parts.fuse(FUSE_X, plusY, run);
        double words = FUSE_X + PartSymbols.FUSE_WIDTH + 12;
        int pixel = plan.rig().wiring().strip().points().get(index).pixel();
        svg.text(
                words,
                minusY - 7,
                START,
                PictureStyle.SMALL,
                PictureStyle.TEXT,
                "to pixel " + pixel + ": " + PartSymbols.wire(run));
        String both = "red + and black −, both of that size; " + PartSymbols.connector(run);
        svg.text(words, plusY + 16, START, PictureStyle.SMALL, PictureStyle.FAINT, both);
    }

    /** The pair of wires to the computer, if this supply feeds it. */
    private void computer() {
        Wiring.Computer computer = plan.rig().wiring().computer();
        if (computer.supply().orElse(-1) != plan.rig().setup().stripSupply()) {
            return;
        }
        double from = top + supplyHeight();
        double x = SignalDrawing.computerX() + 30;
        double down = bottom() + 24;
        pairPart(PictureStyle.PLUS, 150, x, from, down);
        pairPart(PictureStyle.MINUS, 130, x - 20, from, down + 14);
        String fuse = FuseRatings.between(computer.amps(), Double.MAX_VALUE).isPresent()
                ? "fuse of its own, "
                        + FigureText.plain(FuseRatings.between(computer.amps(), Double.MAX_VALUE)
                                .getAsDouble())
                        + " A"
                : "fuse of its own";
        svg.text(
                170,
                from + 40,
                START,
                PictureStyle.SMALL,
                PictureStyle.TEXT,
                "to the computer: up to " + FigureText.amps(computer.amps()));
        svg.text(170, from + 56, START, PictureStyle.SMALL, PictureStyle.FAINT, fuse + "; not calculated further");
    }

    private void pairPart(String colour, double fromX, double toX, double from, double turn) {
        double end = bottom() + SIGNALS_BELOW;
        svg.line(
                colour,
                PictureStyle.WIRE,
                new At(fromX, from),
                new At(fromX, turn),
                new At(toX, turn),
                new At(toX, end));
    }

    private void capacitor() {
        double x = pointX(0);
        double y = stripY() - 32;
        svg.line(PictureStyle.TEXT, 2, new At(x - PAIR, y), new At(x - 4, y));
        svg.line(PictureStyle.TEXT, 2, new At(x + 4, y), new At(x + PAIR, y));
        svg.line(PictureStyle.TEXT, PictureStyle.WIRE, new At(x - 4, y - 11), new At(x - 4, y + 11));
        svg.line(PictureStyle.TEXT, PictureStyle.WIRE, new At(x + 4, y - 11), new At(x + 4, y + 11));
        String text = "capacitor 1000 µF, " + capacitorVolts() + " V or more, its + to +";
        svg.text(x - PAIR - 10, y + 4, END, PictureStyle.SMALL, PictureStyle.TEXT, text);
    }

    /** A common rating well above the voltage: common practice, no source. */
    private int capacitorVolts() {
        double volts = plan.rig().stripSupply().volts();
        return List.of(10, 16, 25, 35, 50, 63, 100).stream()
                .filter(rated -> rated >= 1.25 * volts)
                .findFirst()
                .orElse(100);
    }

    private void strip() {
        double y = stripY();
        svg.box(STRIP_X, y, STRIP_WIDTH, STRIP_HEIGHT, "#eceff1", PictureStyle.TEXT);
        squares(y);
        for (int i = 0; i < runs.size(); i++) {
            svg.dot(pointX(i) - PAIR, y, PictureStyle.PLUS);
            svg.dot(pointX(i) + PAIR, y, PictureStyle.MINUS);
        }
        int last = plan.rig().setup().pixels() - 1;
        double below = y + STRIP_HEIGHT + 18;
        svg.text(STRIP_X, below, START, PictureStyle.SMALL, PictureStyle.TEXT, "pixel 0");
        svg.text(STRIP_X + STRIP_WIDTH, below, END, PictureStyle.SMALL, PictureStyle.TEXT, "pixel " + last);
        String words = (last + 1) + " pixels " + plan.rig().setup().order()
                + "; white: colour holds, orange: it shifts, red: brown-out (ceiling, worst place)";
        svg.text(STRIP_X + STRIP_WIDTH / 2, below + 18, MIDDLE, PictureStyle.SMALL, PictureStyle.FAINT, words);
    }

    private void squares(double y) {
        int pixels = plan.rig().setup().pixels();
        int squares = Math.min(pixels, MOST_SQUARES);
        double[] volts = plan.judged().volts();
        double step = PIXELS_WIDTH / squares;
        double size = Math.min(14, 0.7 * step);
        for (int i = 0; i < squares; i++) {
            int pixel = (int) Math.round((i + 0.5) * pixels / squares - 0.5);
            double x = STRIP_X + INSET + (i + 0.5) * step - size / 2;
            svg.patch(x, y + STRIP_HEIGHT / 2 - 7, size, 14, colour(volts[pixel]));
        }
    }

    private String colour(double volts) {
        Wiring.Strip strip = plan.rig().wiring().strip();
        if (volts < strip.leastVolts()) {
            return "#e53935";
        }
        return volts < strip.fullColourVolts() ? "#ffb74d" : "#ffffff";
    }

    private double pointX(int index) {
        return pixelX(plan.rig().wiring().strip().points().get(index).pixel() + 0.5);
    }

    /** Where a pixel begins; add half a pixel for its middle. */
    double pixelX(double pixel) {
        return STRIP_X + INSET + pixel / plan.rig().setup().pixels() * PIXELS_WIDTH;
    }

    /** The strip's lower edge. */
    double stripBottom() {
        return stripY() + STRIP_HEIGHT;
    }
}
