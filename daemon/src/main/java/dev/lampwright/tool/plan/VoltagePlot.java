package dev.lampwright.tool.plan;

import static dev.lampwright.tool.plan.SvgWriter.Anchor.END;
import static dev.lampwright.tool.plan.SvgWriter.Anchor.MIDDLE;
import static dev.lampwright.tool.plan.SvgWriter.Anchor.START;

import dev.lampwright.tool.plan.SvgWriter.At;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;

/** Plots the voltage along the strip at each load. */
final class VoltagePlot {
    private static final double LEFT = 110;
    private static final double RIGHT = 1130;
    private static final double HEIGHT = 260;
    /** The lowest line is at this share of the supply's voltage or lower, whatever the limits are. */
    private static final double MOST_SHARE = 0.95;

    private static final int LINES = 5;
    private static final int MOST_SEGMENTS = 500;
    private static final List<String> COLOURS = List.of("#8e24aa", "#00838f", "#c62828", "#558b2f");

    private final Plan plan;
    private final SvgWriter svg;
    private final double top;
    private final double highest;
    private final double lowest;

    VoltagePlot(Plan plan, SvgWriter svg, double top) {
        this.plan = plan;
        this.svg = svg;
        this.top = top;
        highest = plan.rig().stripSupply().volts();
        double deepest =
                plan.cases().stream().mapToDouble(StripCase::lowest).min().orElse(0);
        double least = Math.min(deepest, plan.rig().wiring().strip().leastVolts());
        lowest = Math.max(0, Math.min(least, MOST_SHARE * highest) - 0.05 * highest);
    }

    /** Draws everything. */
    void draw() {
        grid();
        Wiring.Strip strip = plan.rig().wiring().strip();
        limit(
                strip.fullColourVolts(),
                PictureStyle.CARE,
                "below " + FigureText.volts(strip.fullColourVolts()) + " colour shifts");
        limit(
                strip.leastVolts(),
                PictureStyle.OVER,
                "below " + FigureText.volts(strip.leastVolts()) + " pixels brown out");
        for (int i = 0; i < plan.cases().size(); i++) {
            curve(plan.cases().get(i), COLOURS.get(i));
            legend(plan.cases().get(i), i);
        }
    }

    /** Where the drawing ends. */
    double bottom() {
        return top + HEIGHT + 90;
    }

    private void grid() {
        for (int i = 0; i <= LINES; i++) {
            double volts = lowest + (highest - lowest) * i / LINES;
            svg.line(PictureStyle.GRID, 1, new At(LEFT, y(volts)), new At(RIGHT, y(volts)));
            svg.text(LEFT - 8, y(volts) + 4, END, PictureStyle.SMALL, PictureStyle.TEXT, FigureText.volts(volts));
        }
        int last = plan.rig().setup().pixels() - 1;
        for (int i = 0; i <= Math.min(last, LINES); i++) {
            int pixel = (int) Math.round((double) last * i / Math.max(1, Math.min(last, LINES)));
            svg.line(PictureStyle.GRID, 1, new At(x(pixel), top), new At(x(pixel), top + HEIGHT));
            svg.text(
                    x(pixel),
                    top + HEIGHT + 18,
                    MIDDLE,
                    PictureStyle.SMALL,
                    PictureStyle.TEXT,
                    Integer.toString(pixel));
        }
        svg.text(
                (LEFT + RIGHT) / 2,
                top + HEIGHT + 36,
                MIDDLE,
                PictureStyle.SMALL,
                PictureStyle.TEXT,
                "pixel; ▲ where a wire joins");
        plan.rig()
                .wiring()
                .strip()
                .points()
                .forEach(point -> svg.text(
                        x(point.pixel()), top + HEIGHT + 4, MIDDLE, PictureStyle.NORMAL, PictureStyle.PLUS, "▲"));
    }

    private void limit(double volts, String colour, String words) {
        if (volts >= lowest && volts <= highest) {
            svg.dashed(colour, 1.5, new At(LEFT, y(volts)), new At(RIGHT, y(volts)));
            svg.text(RIGHT + 10, y(volts) + 4, START, PictureStyle.SMALL, colour, words);
        }
    }

    private void curve(StripCase each, String colour) {
        double[] volts = each.volts();
        int step = Math.max(1, volts.length / MOST_SEGMENTS);
        List<At> points = new ArrayList<>();
        for (int i = 0; i < volts.length; i += step) {
            points.add(new At(x(i), y(volts[i])));
        }
        points.add(new At(x(volts.length - 1), y(volts[volts.length - 1])));
        svg.curve(colour, 2.5, points);
    }

    private void legend(StripCase each, int index) {
        double y = top + HEIGHT + 58 + 20 * (index / 2);
        double x = LEFT + 620 * (index % 2);
        svg.line(COLOURS.get(index), 3, new At(x, y - 4), new At(x + 30, y - 4));
        String words = each.name() + ": " + FigureText.amps(each.totalAmps()) + ", lowest "
                + FigureText.pixelVolts(each.lowest()) + " at pixel " + each.lowestAt();
        svg.text(x + 40, y, START, PictureStyle.SMALL, PictureStyle.TEXT, words);
    }

    private double x(int pixel) {
        int last = plan.rig().setup().pixels() - 1;
        return last == 0 ? (LEFT + RIGHT) / 2 : LEFT + (RIGHT - LEFT) * pixel / last;
    }

    private double y(double volts) {
        double share = (Math.max(lowest, volts) - lowest) / (highest - lowest);
        return top + HEIGHT * (1 - share);
    }
}
