package dev.lampwright.link;

/**
 * The messages waiting for an answer, oldest first, and how many more may be sent. The rules are those of {@code firmware-notes/wire.md},
 * section 2. Allocates nothing after construction.
 */
final class Credit {
    /** The result of {@link #answered} for an answer that nothing waits for. */
    static final int NOT_WAITED_FOR = -1;

    private static final int SEQUENCES = 256;
    private static final int INDEX = SEQUENCES - 1;

    private final int[] sequences = new int[SEQUENCES];
    private final long[] deadlines = new long[SEQUENCES];
    private int oldest;
    private int waiting;
    private int most = 1;
    private boolean owed;
    private long owedSince;

    /**
     * Forgets every waiting message.
     *
     * @param credits how many messages may be unanswered from now on; fewer than 1 counts as 1, more than 255 as 255
     */
    void restart(int credits) {
        most = Math.max(1, Math.min(credits, SEQUENCES - 1));
        waiting = 0;
        owed = false;
    }

    /** Whether another message may be sent. */
    boolean left() {
        return waiting < most;
    }

    /** Whether every message has been answered or lost. */
    boolean idle() {
        return waiting == 0;
    }

    /**
     * Records a message that was sent.
     *
     * @param sequence its sequence number, 0 to 255
     * @param deadline when it counts as lost, in ns of the link's clock
     */
    void spend(int sequence, long deadline) {
        int at = (oldest + waiting++) & INDEX;
        sequences[at] = sequence;
        deadlines[at] = deadline;
        if (!owed) {
            owed = true;
            owedSince = deadline;
        }
    }

    /**
     * Records an answer.
     *
     * @param sequence its sequence number, 0 to 255
     * @return how many older messages are lost as a result, or {@link #NOT_WAITED_FOR}
     */
    int answered(int sequence) {
        for (int older = 0; older < waiting; older++) {
            if (sequences[(oldest + older) & INDEX] == sequence) {
                drop(older + 1);
                owed = false;
                return older;
            }
        }
        return NOT_WAITED_FOR;
    }

    /**
     * Returns the credit of overdue messages.
     *
     * @param now ns of the link's clock
     * @return how many are lost
     */
    int expire(long now) {
        int lost = 0;
        while (lost < waiting && deadlines[(oldest + lost) & INDEX] - now <= 0) {
            lost++;
        }
        drop(lost);
        return lost;
    }

    /** When the oldest waiting message counts as lost; for a credit that is not {@link #idle}. */
    long oldestDeadline() {
        return deadlines[oldest];
    }

    /**
     * For how long an answer has been overdue and none has come, whatever has been sent since.
     *
     * @param now ns of the link's clock
     * @return ns; 0 or less if none is overdue
     */
    long silentNanos(long now) {
        return owed ? now - owedSince : 0;
    }

    private void drop(int count) {
        oldest = (oldest + count) & INDEX;
        waiting -= count;
    }
}
