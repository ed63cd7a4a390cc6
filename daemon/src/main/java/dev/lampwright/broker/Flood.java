package dev.lampwright.broker;

/**
 * Detects more messages than printers can reasonably send: more than {@link #PER_SECOND}, until there are {@link #MOST_AHEAD} too many. A
 * printer reports a few times a second (common practice, no source). For one thread at a time.
 */
final class Flood {
    static final int PER_SECOND = 500;
    static final int MOST_AHEAD = 5000;

    private static final double NANOS = 1e9;

    private final int mostAhead;
    private double ahead;
    private long lookedAt;
    private boolean hasBegun;

    Flood() {
        this(MOST_AHEAD);
    }

    /** One that begins with another number of messages too many. */
    Flood(int mostAhead) {
        this.mostAhead = mostAhead;
    }

    /**
     * A message has come.
     *
     * @param nanos when, on a monotonic clock, in ns
     * @return whether it is one too many
     */
    boolean add(long nanos) {
        double passed = hasBegun ? (nanos - lookedAt) / NANOS : 0;
        hasBegun = true;
        lookedAt = nanos;
        ahead = Math.max(0, ahead - passed * PER_SECOND) + 1;
        return ahead > mostAhead;
    }
}
