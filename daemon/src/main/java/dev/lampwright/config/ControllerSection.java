package dev.lampwright.config;

import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

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
    /**
     * The rates of the Linux kernel's {@code termbits.h} from 9600 to 3000000, and 250000, which a controller at 8 or 16 MHz makes
     * exactly (datasheet of the ATmega328P, tables of baud rates; from memory).
     */
    static final List<Integer> RATES = List.of(
            9_600, 19_200, 38_400, 57_600, 115_200, 230_400, 250_000, 460_800, 500_000, 576_000, 921_600, 1_000_000,
            1_152_000, 1_500_000, 2_000_000, 2_500_000, 3_000_000);

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

    private static int baud(Table table) {
        int baud = table.whole("baud", RATES.get(0), Collections.max(RATES), USUAL_RATE);
        if (!RATES.contains(baud)) {
            int nearest = Collections.min(RATES, Comparator.comparingInt(rate -> Math.abs(rate - baud)));
            table.mistake(
                    "baud",
                    "is " + baud + ", which is no usual rate",
                    "give the rate of the firmware, for instance " + nearest);
        }
        return baud;
    }
}
