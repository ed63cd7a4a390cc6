package dev.lampwright.history;

import dev.lampwright.printer.PrinterState;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;

/** A job of 400 s as the history remembers it, for tests of other packages. */
public final class PastJobs {
    private static final Instant BEGAN = Instant.parse("2026-11-27T07:30:00Z");

    private PastJobs() {}

    private static Stamp at(int seconds) {
        return Stamp.wall(BEGAN.plusSeconds(seconds));
    }

    /** The job, which is still running at 90 %. */
    public static PastJob job() {
        return PastJob.began(at(0), false, PrinterState.WARMING, Double.NaN).seen(at(400), PrinterState.PRINTING, 0.9);
    }

    /** What has happened with its printer. */
    public static Account account() {
        float[] bed = new float[41];
        float[] nozzle = new float[41];
        float[] milliamps = new float[41];
        for (int i = 0; i <= 40; i++) {
            bed[i] = Math.min(60, 20 + 4 * i);
        }
        Arrays.fill(nozzle, Float.NaN);
        return new Account(
                BEGAN.plusSeconds(400),
                List.of(job()),
                List.of(),
                List.of(
                        new StateSpan(PrinterState.IDLE, at(-500), at(0)),
                        new StateSpan(PrinterState.WARMING, at(0), at(100)),
                        new StateSpan(PrinterState.PRINTING, at(100), at(400))),
                List.of(new CurvePiece(at(0), bed, nozzle, milliamps)));
    }
}
