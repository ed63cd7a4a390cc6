package dev.lampwright.soak;

import java.io.IOException;
import java.util.Locale;
import java.util.Optional;

/** How many frames the daemon made and skipped, by its own figures, compared with the time that it was allowed to run. */
final class FrameRate {
    private static final String MADE = "lampwright_frames_total";

    private final int port;
    private final long started;
    private final double framesBefore;
    private long stoppedNanos;
    private double rate;

    /**
     * Starts counting.
     *
     * @param port the daemon's metrics
     */
    FrameRate(int port) throws IOException {
        this.port = port;
        framesBefore = read();
        started = System.nanoTime();
    }

    private double read() throws IOException {
        return Optional.ofNullable(Figure.ofFrames(port).get(MADE)).orElseThrow();
    }

    /**
     * Stops counting.
     *
     * @param stopped for how long the daemon was stopped and could make no frames, in ns
     */
    void end(long stopped) throws IOException {
        stoppedNanos = stopped;
        rate = (read() - framesBefore) / ((System.nanoTime() - started - stoppedNanos) * 1e-9);
    }

    /** Frames in a second. */
    double rate() {
        return rate;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%.2f frames a second were made of %d, the %.0f s left out for which the daemon was stopped",
                rate,
                Rowan.FRAMES_PER_S,
                stoppedNanos * 1e-9);
    }
}
