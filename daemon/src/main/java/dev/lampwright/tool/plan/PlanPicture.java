package dev.lampwright.tool.plan;

import static dev.lampwright.tool.plan.SvgWriter.Anchor.START;

import java.util.List;

/** The plan as a picture to wire from: cautions, wiring, voltage along the strip, verdicts, from top to bottom. */
public final class PlanPicture {
    private static final int WRAP = 165;
    private static final double LINE = 18;
    private static final double LEVEL_WIDTH = 64;

    private final Plan plan;
    private final SvgWriter svg = new SvgWriter();

    private PlanPicture(Plan plan) {
        this.plan = plan;
    }

    /**
     * Draws a plan.
     *
     * @param plan the plan
     * @return an SVG document; the same for the same plan
     */
    public static String of(Plan plan) {
        return new PlanPicture(plan).draw();
    }

    private String draw() {
        String title = "Wiring plan of " + plan.rig().name();
        svg.bold(PictureStyle.MARGIN, 44, START, 24, PictureStyle.TEXT, title);
        double y = cautions(64);
        y = wiring(y + 46);
        y = heading(y + 46, "Voltage along the strip");
        VoltagePlot plot = new VoltagePlot(plan, svg, y);
        plot.draw();
        y = heading(plot.bottom() + 40, "Verdicts, the worst first");
        y = verdicts(y + 6);
        return svg.document(title, PictureStyle.PAGE, y + PictureStyle.MARGIN);
    }

    private double cautions(double top) {
        double height = 16 + LINE * Cautions.ALL.size();
        svg.box(
                PictureStyle.MARGIN,
                top,
                PictureStyle.PAGE - 2 * PictureStyle.MARGIN,
                height,
                PictureStyle.CAUTION,
                PictureStyle.CARE);
        for (int i = 0; i < Cautions.ALL.size(); i++) {
            svg.text(
                    PictureStyle.MARGIN + 14,
                    top + 22 + LINE * i,
                    START,
                    PictureStyle.NORMAL,
                    PictureStyle.TEXT,
                    "⚠ " + Cautions.ALL.get(i));
        }
        return top + height;
    }

    private double wiring(double top) {
        StripDrawing strip = new StripDrawing(plan, svg, heading(top, "Wiring"));
        SignalDrawing signal = new SignalDrawing(plan, svg, strip.bottom() + StripDrawing.SIGNALS_BELOW);
        LightsDrawing lights = new LightsDrawing(plan, svg, strip.bottom() + StripDrawing.SIGNALS_BELOW);
        strip.draw();
        signal.draw(strip);
        lights.draw();
        return Math.max(signal.bottom(), lights.bottom());
    }

    private double heading(double y, String words) {
        svg.bold(PictureStyle.MARGIN, y, START, PictureStyle.LARGE, PictureStyle.TEXT, words);
        return y + 24;
    }

    private double verdicts(double top) {
        double y = top;
        for (Verdict verdict : plan.verdicts()) {
            String colour = PictureStyle.of(verdict.level());
            svg.bold(
                    PictureStyle.MARGIN,
                    y,
                    START,
                    PictureStyle.NORMAL,
                    colour,
                    verdict.level().name());
            String remedy = verdict.remedy().isEmpty() ? "" : " → " + verdict.remedy();
            List<String> lines = LineBreaker.wrapped(
                    verdict.title() + ": " + verdict.what() + " " + verdict.limit() + remedy, WRAP, 0);
            for (String line : lines) {
                svg.text(PictureStyle.MARGIN + LEVEL_WIDTH, y, START, PictureStyle.NORMAL, PictureStyle.TEXT, line);
                y += LINE;
            }
        }
        return y;
    }
}
