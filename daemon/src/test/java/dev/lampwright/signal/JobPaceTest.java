package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class JobPaceTest {
    private final JobPace pace = new JobPace();

    /** A job of an hour with even progress, reported in steps as printers do. */
    @ParameterizedTest
    @CsvSource({"0.01, 1", "0.01, 30", "0.001, 2", "0.0001, 5"})
    void findsTheEndOfAnEvenJob(double step, int everyS) {
        double whole = 3600;
        for (int t = 0; t < 1800; t += everyS) {
            double end = pace.take(Math.floor(t / whole / step + 1e-9) * step, t);
            assertTrue(t > 60 || Double.isNaN(end), "too early to tell");
            assertTrue(t < 600 || Math.abs(end - whole) < 0.06 * whole, t + ": " + end);
        }
        assertEquals(1, pace.perHour(), 0.03);
    }

    @Test
    void isUnknownUntilSomeOfTheJobWasSeen() {
        for (int t = 0; t < 500; t++) {
            assertTrue(Double.isNaN(pace.take(0.3, t)));
        }
        assertTrue(Double.isNaN(pace.perHour()));
        assertTrue(Double.isNaN(pace.take(Double.NaN, 500)));
    }

    /** A daemon started in the middle of a job. */
    @Test
    void needsNoBeginning() {
        double end = 0;
        for (int t = 1800; t < 2400; t++) {
            end = pace.take(t / 3600.0, t);
        }
        assertEquals(3600, end, 1);
    }

    @Test
    void beginsAnewWithAnotherJob() {
        for (int t = 0; t < 3000; t++) {
            pace.take(t / 3600.0, t);
        }
        assertTrue(Double.isNaN(pace.take(0, 3000)));
        double end = 0;
        for (int t = 3001; t < 3300; t++) {
            end = pace.take((t - 3000) / 1000.0, t);
        }
        assertEquals(4000, end, 5);
    }

    @Test
    void isNowWhenTheJobIsDone() {
        pace.take(0.2, 0);
        assertEquals(7, pace.take(1, 7));
    }
}
