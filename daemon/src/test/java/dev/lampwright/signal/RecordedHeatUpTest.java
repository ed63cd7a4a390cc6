package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Time to ready of a real heater; step-responses.csv says what was recorded, by whom and where. */
final class RecordedHeatUpTest {
    /** Room temperature when the heater was recorded, in °C. */
    private static final double ROOM_C = 21;

    /**
     * Share of the reports at which the true time is within two standard errors, and mean error as share of the time left, in percent. At
     * 50 °C the heater, which is at half power, is close to where it would stay, and one record has readings with errors of several
     * kelvins.
     */
    @ParameterizedTest
    @CsvSource({
        "steady, 40, 100, 6",
        "steady, 45, 100, 8",
        "steady, 50, 75, 24",
        "shaky, 40, 95, 20",
        "shaky, 45, 80, 22",
        "shaky, 50, 75, 26"
    })
    void foretellsWhatWasRecorded(String name, double targetC, double leastWithin, double mostOff) throws IOException {
        double[] celsius = record(name);
        double[] seconds = record("name");
        int reached = firstAt(celsius, targetC - ReadyTime.WITHIN_K);
        ReadyTime ready = new ReadyTime(ROOM_C - 1);
        int told = 0;
        int within = 0;
        double off = 0;
        for (int i = 0; i < reached; i++) {
            double end = ready.take(celsius[i], targetC, seconds[i], true);
            if (!Double.isNaN(end)) {
                // It got there somewhere between two records.
                double error = Math.abs(end - Math.max(seconds[reached - 1], Math.min(seconds[reached], end)));
                told++;
                within += error <= 2 * ready.errorS() ? 1 : 0;
                off += error / (seconds[reached] - seconds[i]);
            }
        }
        String what = within + " of " + told + ", off by " + off / told;
        assertTrue(told >= 0.5 * reached, what);
        assertTrue(within >= leastWithin / 100 * told, what);
        assertTrue(off <= mostOff / 100 * told, what);
    }

    private static int firstAt(double[] celsius, double goalC) {
        int i = 0;
        while (celsius[i] < goalC) {
            i++;
        }
        return i;
    }

    private static double[] record(String name) throws IOException {
        try (InputStream in = RecordedHeatUpTest.class.getResourceAsStream("step-responses.csv")) {
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            String row = lines.stream()
                    .filter(line -> line.startsWith(name + ","))
                    .findFirst()
                    .orElseThrow();
            return Arrays.stream(row.split(","))
                    .skip(1)
                    .mapToDouble(Double::parseDouble)
                    .toArray();
        }
    }
}
