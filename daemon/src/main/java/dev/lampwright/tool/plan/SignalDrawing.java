package dev.lampwright.tool.plan;

import static dev.lampwright.tool.plan.SvgWriter.Anchor.END;
import static dev.lampwright.tool.plan.SvgWriter.Anchor.MIDDLE;
import static dev.lampwright.tool.plan.SvgWriter.Anchor.START;

import dev.lampwright.protocol.Setup;
import dev.lampwright.tool.plan.SvgWriter.At;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.OptionalInt;

/** Draws everything that carries signals: printer, computer, controller, and the data line up to the strip. */
final class SignalDrawing {
    private static final double PRINTER_WIDTH = 130;
    private static final double COMPUTER_X = 230;
    private static final double COMPUTER_WIDTH = 180;
    private static final double CONTROLLER_X = 470;
    private static final double CONTROLLER_WIDTH = 200;
    private static final double HEIGHT = 112;
    private static final double DATA_X = 500;
    private static final double GROUND_X = 640;
    private static final double SHIFTER_X = 525;
    private static final double SHIFTER_WIDTH = 120;
    private static final double OTHER_LINES_X = 645;
    private static final double OTHER_LINES_APART = 3;
    private static final double OTHER_LINES_ABOVE = 4;
    private static final double OTHER_LINES_WORD = 12;
    private static final double CORNER = 25;
    private static final double RESISTOR_X = 690;
    private static final double RESISTOR_WIDTH = 70;

    private final Plan plan;
    private final SvgWriter svg;
    private final PartSymbols parts;
    private final double top;

    SignalDrawing(Plan plan, SvgWriter svg, double top) {
        this.plan = plan;
        this.svg = svg;
        this.top = top;
        parts = new PartSymbols(svg);
    }

    /**
     * Draws all of it.
     *
     * @param strip the strip's drawing, which is above
     */
    void draw(StripDrawing strip) {
        parts.box(
                new At(PictureStyle.MARGIN, top),
                PRINTER_WIDTH,
                HEIGHT,
                PictureStyle.BOARD,
                "Printer",
                List.of("reports its status", "over MQTT"));
        link(PictureStyle.MARGIN + PRINTER_WIDTH, COMPUTER_X, "MQTT");
        parts.box(new At(COMPUTER_X, top), COMPUTER_WIDTH, HEIGHT, PictureStyle.BOARD, "Computer", computer());
        link(COMPUTER_X + COMPUTER_WIDTH, CONTROLLER_X, "USB");
        parts.box(new At(CONTROLLER_X, top), CONTROLLER_WIDTH, HEIGHT, PictureStyle.BOARD, "Controller", controller());
        data(strip);
        ground(strip);
    }

    /** Left edge of the computer. */
    static double computerX() {
        return COMPUTER_X;
    }

    /** Right edge of the controller, where its outputs are. */
    static double outputs() {
        return CONTROLLER_X + CONTROLLER_WIDTH;
    }

    /** Where the drawing ends. */
    double bottom() {
        return top + HEIGHT + (plan.rig().setup().runs().size() > 1 ? 2 * PictureStyle.SMALL : 0);
    }

    private List<String> computer() {
        Wiring.Computer computer = plan.rig().wiring().computer();
        OptionalInt supply = computer.supply();
        String fed = supply.isPresent()
                ? "on supply "
                        + plan.rig().wiring().supplies().get(supply.getAsInt()).name()
                : "a supply of its own";
        return List.of("runs lampwright", fed, "up to " + FigureText.amps(computer.amps()));
    }

    private List<String> controller() {
        Wiring.Board board = plan.rig().wiring().board();
        return List.of(
                board.kind().chip() + ", logic of " + FigureText.plain(board.logicVolts()) + " V",
                "takes " + FigureText.amps(board.ownAmps()) + " from USB",
                plan.rig().baud() == 0 ? "over USB" : plan.rig().baud() + " baud",
                plan.rig().wiring().strip().fromBoard() ? "feeds the strip!" : "5 V pin: feeds no light",
                "pins: reference firmware");
    }

    private void link(double from, double to, String word) {
        double y = top + HEIGHT / 2;
        svg.line(PictureStyle.DATA, 2, new At(from, y), new At(to, y));
        svg.text((from + to) / 2, y - 6, MIDDLE, PictureStyle.SMALL, PictureStyle.DATA, word);
    }

    private void data(StripDrawing strip) {
        double y = strip.dataY();
        svg.line(PictureStyle.DATA, 2, new At(DATA_X, top), new At(DATA_X, y), new At(StripDrawing.nearEnd(), y));
        shifter(y);
        svg.box(RESISTOR_X, y - 8, RESISTOR_WIDTH, 16, PictureStyle.FUSE, PictureStyle.TEXT);
        svg.text(
                RESISTOR_X + RESISTOR_WIDTH / 2, y - 14, MIDDLE, PictureStyle.SMALL, PictureStyle.TEXT, "330 to 470 Ω");
        svg.text(StripDrawing.nearEnd() - 6, y - 6, END, PictureStyle.SMALL, PictureStyle.DATA, "DIN");
        svg.text(DATA_X - 8, top - 8, END, PictureStyle.SMALL, PictureStyle.DATA, "data: pin " + pin(firstOutput()));
        otherLines(strip);
    }

    private int firstOutput() {
        List<Setup.Run> runs = plan.rig().setup().runs();
        return runs.isEmpty() ? 0 : runs.get(0).output();
    }

    private String pin(int output) {
        return plan.rig().wiring().board().kind().dataPin(output);
    }

    /** Runs after the first, each to its beginning on the strip; those that begin farther away are lower, so none crosses another. */
    private void otherLines(StripDrawing strip) {
        List<Setup.Run> runs = plan.rig().setup().runs();
        int first = 0;
        for (int i = 1; i < runs.size(); i++) {
            first += runs.get(i - 1).pixels();
            double from = OTHER_LINES_X + OTHER_LINES_APART * i;
            double row = top - OTHER_LINES_APART * (runs.size() - i) - OTHER_LINES_ABOVE;
            double to = strip.pixelX(first);
            svg.line(
                    PictureStyle.DATA,
                    2,
                    new At(from, top),
                    new At(from, row),
                    new At(to, row),
                    new At(to, strip.stripBottom()));
            svg.text(
                    to + 4,
                    strip.stripBottom() + OTHER_LINES_WORD,
                    START,
                    PictureStyle.SMALL,
                    PictureStyle.DATA,
                    pin(runs.get(i).output()));
        }
        if (runs.size() > 1) {
            svg.text(
                    OTHER_LINES_X + CORNER,
                    top + HEIGHT + PictureStyle.SMALL + 4,
                    END,
                    PictureStyle.SMALL,
                    PictureStyle.DATA,
                    runs.size() + " data lines: each as the first, with a resistor"
                            + (shifted() ? " and a gate of a level shifter" : ""));
        }
    }

    /** Whether a level shifter is fitted or needed. */
    private boolean shifted() {
        return plan.rig().wiring().board().shifter()
                || !SignalJudge.DataLevel.of(plan.rig()).enough();
    }

    private void shifter(double y) {
        SignalJudge.DataLevel level = SignalJudge.DataLevel.of(plan.rig());
        if (plan.rig().wiring().board().shifter()) {
            svg.box(SHIFTER_X, y - 20, SHIFTER_WIDTH, 40, PictureStyle.BOARD, PictureStyle.TEXT);
            svg.bold(
                    SHIFTER_X + SHIFTER_WIDTH / 2,
                    y - 3,
                    MIDDLE,
                    PictureStyle.SMALL,
                    PictureStyle.TEXT,
                    "level shifter");
            svg.text(
                    SHIFTER_X + SHIFTER_WIDTH / 2,
                    y + 13,
                    MIDDLE,
                    PictureStyle.SMALL,
                    PictureStyle.TEXT,
                    "74AHCT125 at 5 V");
        } else if (!level.enough()) {
            svg.box(SHIFTER_X, y - 20, SHIFTER_WIDTH, 40, "#ffebee", PictureStyle.OVER);
            svg.bold(SHIFTER_X + SHIFTER_WIDTH / 2, y - 3, MIDDLE, PictureStyle.SMALL, PictureStyle.OVER, "fit here:");
            svg.text(
                    SHIFTER_X + SHIFTER_WIDTH / 2,
                    y + 13,
                    MIDDLE,
                    PictureStyle.SMALL,
                    PictureStyle.OVER,
                    "74AHCT125 at 5 V");
        }
        String words = "high " + FigureText.volts(level.volts()) + ", needs " + FigureText.volts(level.needed());
        svg.text(
                DATA_X + 12,
                y - 26,
                START,
                PictureStyle.SMALL,
                level.enough() ? PictureStyle.DATA : PictureStyle.OVER,
                words);
    }

    private void ground(StripDrawing strip) {
        double low = strip.groundY() + 38;
        double end = StripDrawing.nearEnd();
        svg.line(
                PictureStyle.MINUS,
                2,
                new At(GROUND_X, top),
                new At(GROUND_X, low),
                new At(end - 12, low),
                new At(end - 12, strip.groundY()),
                new At(end, strip.groundY()));
        svg.text(GROUND_X + 8, low + 16, START, PictureStyle.SMALL, PictureStyle.TEXT, "grounds of controller");
        svg.text(GROUND_X + 8, low + 32, START, PictureStyle.SMALL, PictureStyle.TEXT, "and strip joined");
    }
}
