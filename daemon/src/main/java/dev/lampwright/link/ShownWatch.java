package dev.lampwright.link;

import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * Whether a controller that accepts its set-up shows any of the frames sent afterwards, and what it reports instead. For the link's thread
 * only. Allocates nothing while frames are shown.
 */
final class ShownWatch {
    private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(1);

    private final String port;
    private final Tally tally;
    private final LongSupplier clock;
    private long shown;
    private long sentWhenShown;
    private long garbledWhenShown;
    private long waitingSince;
    private boolean waiting;
    private boolean overdue;

    ShownWatch(String port, Tally tally, LongSupplier clock) {
        this.port = port;
        this.tally = tally;
        this.clock = clock;
    }

    /** Starts over: another controller may be on the line. */
    void restart() {
        shown = tally.framesShown.get();
        sentWhenShown = tally.partsSent.get();
        garbledWhenShown = tally.garbled.get();
        waiting = false;
        overdue = false;
    }

    /**
     * Checks the counts. Call this at least every tenth of a second while frames are sent.
     *
     * @param frameNanos how long one frame takes on the line and on the strip, in ns
     */
    void look(long frameNanos) {
        if (tally.framesShown.get() != shown) {
            restart();
        } else if (!waiting) {
            waiting = tally.partsSent.get() != sentWhenShown;
            waitingSince = clock.getAsLong();
        } else {
            overdue |= clock.getAsLong() - waitingSince > PATIENCE_NANOS + frameNanos;
        }
    }

    /** Whether frames have been sent for a second, plus the time of one frame, and none was shown. */
    boolean isOverdue() {
        return overdue;
    }

    /**
     * The message for the user while {@link #isOverdue}.
     *
     * @param answers what the controller has answered
     */
    String words(Answers answers) {
        return "the controller on " + port + " shows none of the frames it is sent: " + reason(answers);
    }

    private String reason(Answers answers) {
        if (answers.refused().isPresent()) {
            Refusal refusal = answers.refused().get();
            return refusal.words() + "; " + remedy(refusal);
        }
        if (answers.unready()) {
            return "it keeps reporting that it has just started; check its supply, and that nothing resets it";
        }
        return tally.garbled.get() != garbledWhenShown
                ? "its answers do not follow the protocol; " + Refusal.NEW_FIRMWARE
                : "it accepts them and does not report that it shows them; " + Refusal.NEW_FIRMWARE;
    }

    private static String remedy(Refusal refusal) {
        return switch (refusal.complaint()) {
            case NOT_SET_UP ->
                "it loses its set-up, so check its supply, and that nothing resets it; if that persists, "
                        + Refusal.NEW_FIRMWARE;
            default -> Refusal.NEW_FIRMWARE;
        };
    }
}
