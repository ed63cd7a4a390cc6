package dev.lampwright.cli;

import dev.lampwright.tool.survey.Survey;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Supplier;

/** The progress of a survey without a terminal: a line every ten seconds, and one when there is a problem with the broker. */
final class SurveyReport {
    private static final long EVERY_NANOS = Duration.ofSeconds(10).toNanos();

    private final PrintWriter out;
    private final Duration duration;
    private final Supplier<Optional<String>> trouble;
    private long startNanos = System.nanoTime();
    private long nextNanos = startNanos + EVERY_NANOS;
    private boolean wasConnected;
    private String lastTrouble = "";

    /**
     * Prints nothing yet.
     *
     * @param out where the lines go
     * @param duration how long the survey listens
     * @param trouble what is wrong with the broker, if anything is
     */
    SurveyReport(PrintWriter out, Duration duration, Supplier<Optional<String>> trouble) {
        this.out = out;
        this.duration = duration;
        this.trouble = trouble;
    }

    /** Reports, if it is time. */
    void look(Survey survey, boolean connected) {
        look(survey, connected, System.nanoTime());
    }

    /** The same for a given time, in ns. */
    void look(Survey survey, boolean connected, long now) {
        if (connected && !wasConnected) {
            wasConnected = true;
            startNanos = now;
            nextNanos = now + EVERY_NANOS;
        }
        String wrong = trouble.get().orElse("");
        if (!wrong.isEmpty() && !wrong.equals(lastTrouble)) {
            lastTrouble = wrong;
            line(wrong);
        }
        if (now - nextNanos >= 0) {
            nextNanos = now + EVERY_NANOS;
            long second = Duration.ofNanos(now - startNanos).toSeconds();
            line(
                    connected
                            ? second + " s of " + duration.toSeconds() + " s: " + count(survey.messages(), "message")
                                    + ", " + count(survey.values(), "value")
                            : "waiting for the broker");
        }
    }

    private static String count(long count, String thing) {
        return count + " " + thing + (count == 1 ? "" : "s");
    }

    private void line(String line) {
        out.println(line);
        out.flush();
    }
}
