package dev.lampwright.cli;

import dev.lampwright.tool.survey.Proposal;
import dev.lampwright.tool.survey.Survey;
import dev.lampwright.tool.survey.SurveyTable;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** The progress of a survey in the terminal: a table redrawn in place twice a second, or less often if drawing would delay messages. */
final class SurveyScreen implements AutoCloseable {
    private static final String BEGIN = "\u001b[?25l\u001b[?7l";
    private static final String END = "\u001b[?7h\u001b[?25h";
    private static final String CLEAR_TO_END_OF_LINE = "\u001b[K";
    private static final String CLEAR_BELOW = "\u001b[J";
    private static final long DRAW_EVERY_NANOS = 500_000_000;
    private static final int MOST_ROWS = 18;

    /** Drawing takes at most this fraction of the time (one in this many). */
    private static final int SHARE = 8;

    private final PrintWriter out;
    private final Duration duration;
    private long startNanos = System.nanoTime();
    private boolean wasConnected;
    private long nextNanos = startNanos;
    private int linesDrawn;

    /**
     * Hides the cursor, and disables line wrapping.
     *
     * @param out the terminal
     * @param duration how long the survey listens
     */
    SurveyScreen(PrintWriter out, Duration duration) {
        this.out = out;
        this.duration = duration;
        out.print(BEGIN);
    }

    /** Draws, if it is time. */
    void look(Survey survey, boolean connected) {
        long now = System.nanoTime();
        startNanos = connected && !wasConnected ? now : startNanos;
        wasConnected = connected;
        if (now - nextNanos >= 0) {
            draw(survey.proposal(), connected);
            long took = System.nanoTime() - now;
            nextNanos = now + Math.max(DRAW_EVERY_NANOS, SHARE * took);
        }
    }

    private void draw(Proposal proposal, boolean connected) {
        List<String> lines = new ArrayList<>();
        long passed = Duration.ofNanos(System.nanoTime() - startNanos).toSeconds();
        long second = Math.min(passed, duration.toSeconds());
        lines.add(
                connected
                        ? second + " s of " + duration.toSeconds() + ", " + proposal.messages() + " messages, "
                                + proposal.rows().size() + " values. Ctrl-C ends it."
                        : "waiting for the broker");
        lines.addAll(SurveyTable.values(proposal, MOST_ROWS));
        StringBuilder text = new StringBuilder(erasing());
        lines.forEach(line ->
                text.append('\r').append(line).append(CLEAR_TO_END_OF_LINE).append('\n'));
        text.append(CLEAR_BELOW);
        linesDrawn = lines.size();
        out.print(text);
        out.flush();
    }

    private String erasing() {
        return linesDrawn > 0 ? "\u001b[" + linesDrawn + 'A' : "";
    }

    /** Clears the table, and restores the terminal. */
    @Override
    public void close() {
        out.print(erasing() + '\r' + CLEAR_BELOW + END);
        out.flush();
    }
}
