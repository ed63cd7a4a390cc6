package dev.lampwright.soak;

import dev.lampwright.testing.Recording.Entry;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** Is every frame that is shown one that the daemon sent, complete and in order? May be used by two threads. */
final class SentCheck {
    private static final int MOST_KEPT = 4096;

    private final Deque<Sent> sent = new ArrayDeque<>();

    private record Sent(int sequence, List<Integer> strip, List<Integer> duties) {
        boolean isShownBy(Entry shown) {
            return sequence == shown.sequence() && strip.equals(shown.strip()) && duties.equals(shown.duties());
        }
    }

    /**
     * Records a frame sent by the daemon, before anything can happen to it.
     *
     * @param sequence sequence number of its last part
     * @param strip the strip's bytes
     * @param duties the dimmers' duties
     */
    synchronized void sent(int sequence, List<Integer> strip, List<Integer> duties) {
        sent.add(new Sent(sequence, strip, duties));
        if (sent.size() > MOST_KEPT) {
            sent.remove();
        }
    }

    /**
     * Judges what is shown.
     *
     * @param shown a frame of the host
     * @return what is wrong, if anything
     */
    synchronized Optional<String> judge(Entry shown) {
        if (sent.stream().noneMatch(frame -> frame.isShownBy(shown))) {
            return Optional.of("shown, but not sent, or not in this turn: " + shown);
        }
        while (!sent.remove().isShownBy(shown)) {
            // Lost on the line.
        }
        return Optional.empty();
    }
}
