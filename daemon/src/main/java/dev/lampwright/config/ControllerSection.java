package dev.lampwright.config;

import dev.lampwright.board.BoardKind;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.Optional;

/**
 * The section {@code [controller]}.
 *
 * @param port serial port
 * @param baud bits per second
 * @param board the board, if the file names it
 * @param holdoverMillis time without a frame until {@code whenSilent} is shown
 * @param whenSilent what is shown then
 * @param atEnd what the lights do when the daemon is asked to end
 */
record ControllerSection(
        String port, int baud, Optional<BoardKind> board, int holdoverMillis, WhenSilent whenSilent, AtEnd atEnd) {
    private static final double MILLIS = 1000;
    private static final String WANTED_PORT = "give the serial port, for instance \"/dev/ttyACM0\"";
    private static final Key<String> PORT = Key.text("port", "path of a serial port", WANTED_PORT)
            .needed()
            .example("\"/dev/ttyACM0\"", "`lampwright ports` lists the ports");
    private static final Key<Integer> BAUD = Key.whole("baud", BaudRate.LEAST, BaudRate.MOST)
            .usual(500_000, "500000")
            .example("500000", "as in the firmware; over USB any will do");
    private static final Key<BoardKind> BOARD = Key.word("board", BoardKind.class)
            .without("worked out from the port's name and `outputs`")
            .comment("\"rp2040\"", "or \"atmega328p\": for `check` and `plan`");
    private static final Key<Double> HOLDOVER = Key.number(
                    "holdover_s", Setup.SHORTEST_HOLDOVER_MS / MILLIS, Setup.LONGEST_HOLDOVER_MS / MILLIS)
            .usual(3.0, "3")
            .example("3", "how long the last frame stays once the daemon is gone; then");
    private static final Key<WhenSilent> WHEN_SILENT = Key.word("when_silent", WhenSilent.class)
            .usual(WhenSilent.BEACON, "beacon")
            .example("\"beacon\"", "\"beacon\", a dim amber blink; \"dark\"; or \"keep\" the last frame");
    private static final Key<AtEnd> AT_END = Key.word("at_end", AtEnd.class)
            .usual(AtEnd.FADE, "fade")
            .example(
                    "\"fade\"",
                    "when the daemon is stopped: \"fade\" out and stay dark, or show what \"when_silent\" says");

    /** The controller, at the far end of the serial line. */
    static final Section SECTION = Section.of(
            "controller", "the board that drives the lights", PORT, BAUD, BOARD, HOLDOVER, WHEN_SILENT, AT_END);

    static ControllerSection read(Table table) {
        String port = table.as(SECTION).need(PORT, WANTED_PORT).orElse("");
        Optional<BoardKind> board = table.find(BOARD);
        if (Wording.hasControl(port)) {
            table.mistake("port", "is " + Wording.quoted(port) + ", with a control character in it", WANTED_PORT);
        }
        double holdoverS = table.get(HOLDOVER);
        WhenSilent whenSilent = table.get(WHEN_SILENT);
        AtEnd atEnd = table.get(AT_END);
        int holdoverMillis = (int) Math.round(holdoverS * MILLIS);
        return new ControllerSection(port, baud(table), board, holdoverMillis, whenSilent, atEnd);
    }

    /**
     * The controller that the section describes.
     *
     * @param setup what is connected to it
     * @return the controller
     */
    ControllerSpec spec(Setup setup) {
        return new ControllerSpec(port, baud, setup);
    }

    private static int baud(Table table) {
        int baud = table.get(BAUD);
        table.attempt("baud", "", () -> BaudRate.requireUsual(baud));
        return baud;
    }
}
