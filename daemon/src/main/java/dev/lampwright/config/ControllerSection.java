package dev.lampwright.config;

import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;

/**
 * The section {@code [controller]}.
 *
 * @param port serial port
 * @param baud bits a second
 * @param holdoverMillis how long without a frame until {@code whenSilent} is shown
 * @param whenSilent what is shown then
 * @param atEnd what the lights do when the daemon is asked to end
 */
record ControllerSection(String port, int baud, int holdoverMillis, WhenSilent whenSilent, AtEnd atEnd) {
    private static final int USUAL_RATE = 500_000;
    private static final double MILLIS = 1000;

    static ControllerSection read(Table table) {
        String port = table.needText("port", "give the serial port, for instance \"/dev/ttyACM0\"")
                .orElse("");
        double holdoverS =
                table.number("holdover_s", Setup.SHORTEST_HOLDOVER_MS / MILLIS, Setup.LONGEST_HOLDOVER_MS / MILLIS, 3);
        WhenSilent whenSilent = table.choice("when_silent", WhenSilent.BEACON);
        AtEnd atEnd = table.choice("at_end", AtEnd.FADE);
        return new ControllerSection(port, baud(table), (int) Math.round(holdoverS * MILLIS), whenSilent, atEnd);
    }

    /**
     * The controller that the section describes.
     *
     * @param setup what is fitted to it
     * @return the controller
     */
    ControllerSpec spec(Setup setup) {
        return new ControllerSpec(port, baud, setup);
    }

    private static int baud(Table table) {
        int baud = table.whole("baud", BaudRate.LEAST, BaudRate.MOST, USUAL_RATE);
        table.attempt("baud", "", () -> BaudRate.requireUsual(baud));
        return baud;
    }
}
