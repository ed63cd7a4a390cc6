package dev.lampwright.tool.plan;

import static dev.lampwright.tool.plan.SvgWriter.Anchor.MIDDLE;
import static dev.lampwright.tool.plan.SvgWriter.Anchor.START;

import dev.lampwright.tool.plan.SvgWriter.At;
import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.List;

/** Symbols that more than one drawing needs. */
final class PartSymbols {
    /** Width of a fuse. */
    static final double FUSE_WIDTH = 84;

    private static final double FUSE_HEIGHT = 24;
    private static final double LINE = 17;
    private static final double INDENT = 10;

    private final SvgWriter svg;

    PartSymbols(SvgWriter svg) {
        this.svg = svg;
    }

    /**
     * A box with a heading and a few lines, each shortened if it is wider than the box.
     *
     * @param at its upper left corner
     * @param width its width
     * @param height its height
     * @param fill its colour
     * @param heading the heading
     * @param lines the lines below
     */
    void box(At at, double width, double height, String fill, String heading, List<String> lines) {
        svg.box(at.x(), at.y(), width, height, fill, PictureStyle.TEXT);
        double room = width - 2 * INDENT;
        svg.bold(
                at.x() + INDENT,
                at.y() + 20,
                START,
                PictureStyle.NORMAL,
                PictureStyle.TEXT,
                TextWidth.fitted(heading, PictureStyle.NORMAL, true, room));
        for (int i = 0; i < lines.size(); i++) {
            svg.text(
                    at.x() + INDENT,
                    at.y() + 20 + (i + 1) * LINE,
                    START,
                    PictureStyle.SMALL,
                    PictureStyle.TEXT,
                    TextWidth.fitted(lines.get(i), PictureStyle.SMALL, false, room));
        }
    }

    /**
     * A fuse on a horizontal wire.
     *
     * @param x its left end
     * @param y the wire's height
     * @param run the wire
     */
    void fuse(double x, double y, WireRun run) {
        boolean right = run.fuse().isPresent();
        String edge = right ? PictureStyle.TEXT : PictureStyle.OVER;
        svg.box(x, y - FUSE_HEIGHT / 2, FUSE_WIDTH, FUSE_HEIGHT, PictureStyle.FUSE, edge);
        String text = right ? "fuse " + FigureText.plain(run.fuse().getAsDouble()) + " A" : "no fuse fits";
        svg.text(x + FUSE_WIDTH / 2, y + 4, MIDDLE, PictureStyle.SMALL, edge, text);
    }

    /**
     * The text at a wire.
     *
     * @param run the wire
     * @return size, length, load, loss
     */
    static String wire(WireRun run) {
        return run.feed().wire().label() + ", " + FigureText.plain(run.metres()) + " m, "
                + FigureText.amps(run.rmsAmps()) + ", loses " + FigureText.volts(run.dropVolts());
    }

    /**
     * The text at its connector.
     *
     * @param run the wire
     * @return its rating, or that it needs one
     */
    static String connector(WireRun run) {
        return run.feed().connectorAmps().isPresent()
                ? "connector " + FigureText.plain(run.feed().connectorAmps().getAsDouble()) + " A"
                : "connector of " + FigureText.atLeast(run.rmsAmps() / SupplyJudge.STEADY_SHARE) + " or more";
    }

    /**
     * The name of a supply.
     *
     * @param supply the supply
     * @return its name and its voltage; only one of them if they are the same
     */
    static String name(Wiring.Supply supply) {
        String volts = FigureText.plain(supply.volts()) + " V";
        return supply.name().equals(volts) ? volts : supply.name() + ", " + volts;
    }

    /**
     * The text in a supply.
     *
     * @param plan the plan
     * @param index index of the supply
     * @return its rating and its load
     */
    static List<String> supply(Plan plan, int index) {
        Wiring.Supply supply = plan.rig().wiring().supplies().get(index);
        Demand.Draw ceiling = plan.ceiling().draws().get(index);
        String rated = supply.ratedAmps().isPresent()
                ? "rated " + FigureText.amps(supply.ratedAmps().getAsDouble())
                : "take " + FigureText.atLeast(new SupplyJudge(plan.rig()).toFit(index)) + " or more";
        List<String> lines = new ArrayList<>();
        lines.add(rated);
        lines.add("gives up to " + FigureText.amps(ceiling.peakAmps()));
        lines.add(FigureText.watts(ceiling.peakAmps() * supply.volts()) + " at the ceiling");
        supply.connectorAmps().ifPresent(amps -> lines.add("by a connector of " + FigureText.plain(amps) + " A"));
        return lines;
    }
}
