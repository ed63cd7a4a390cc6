package dev.lampwright.shelf;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * All rigs known to a broker, each with its newest status. A daemon reports every few seconds, so one that has not for longer than
 * {@link #USUAL_LAPSE} counts as lost, whatever the retained status says: a computer that lost its power, or its connection to the broker,
 * cannot withdraw it. Only its own time shows how old a kept status is, by a clock that may be wrong; the next report shows by how much.
 * Safe for many threads.
 */
public final class Shelf {
    /** Three times the interval between a daemon's reports. */
    public static final Duration USUAL_LAPSE = Duration.ofSeconds(15);

    /** The maximum number of rigs kept. */
    static final int MOST = 4096;

    private final long lapseNanos;
    private final Map<String, Entry> entries = new TreeMap<>();
    private Optional<Long> deafSince = Optional.empty();
    private long left;

    /**
     * Creates an empty one.
     *
     * @param lapse after how long without a report a rig counts as lost
     */
    public Shelf(Duration lapse) {
        lapseNanos = lapse.toNanos();
    }

    /** What is known about one rig. Times are in ns of a monotonic clock. */
    private static final class Entry {
        private RigStatus status;
        private long heard;
        /** How far its computer's clock is behind ours. */
        private Optional<Duration> behind = Optional.empty();

        private String runBefore = "";
        private long runBeforeHeard;
        private Optional<Long> metTwo = Optional.empty();
    }

    /**
     * Takes in a message.
     *
     * @param topic where it was published
     * @param payload what it says
     * @param kept whether the broker had kept it from before the subscription
     * @param nanos now, by a monotonic clock
     * @param wall now, by the wall clock
     */
    public synchronized void hear(String topic, byte[] payload, boolean kept, long nanos, Instant wall) {
        connected(true, nanos);
        if (payload.length == 0) {
            entries.remove(topic);
            return;
        }
        RigStatus.of(topic, payload).ifPresent(status -> take(topic, status, kept, nanos, wall));
    }

    private void take(String topic, RigStatus status, boolean kept, long nanos, Instant wall) {
        if (entries.size() >= MOST && !entries.containsKey(topic)) {
            left++;
            return;
        }
        Entry entry = entries.computeIfAbsent(topic, same -> new Entry());
        noteRun(entry, status.run(), nanos);
        entry.status = status;
        Optional<Duration> age = status.at().map(at -> Duration.between(at, wall));
        if (!kept) {
            entry.behind = age;
            entry.heard = nanos;
        } else {
            Duration clock = entry.behind.orElse(Duration.ZERO);
            entry.heard = nanos
                    - age.map(time -> Math.max(0, nanos(time.minus(clock)))).orElse(lapseNanos);
        }
    }

    /** Whatever a foreign clock shows, the difference does not overflow. */
    private static long nanos(Duration time) {
        long longest = TimeUnit.DAYS.toSeconds(365 * 100L);
        return TimeUnit.SECONDS.toNanos(Math.max(-longest, Math.min(longest, time.toSeconds())));
    }

    /** A restarted daemon is a new run; two daemons alternate. */
    private void noteRun(Entry entry, String run, long nanos) {
        if (entry.status == null || entry.status.run().equals(run)) {
            return;
        }
        if (run.equals(entry.runBefore) && nanos - entry.runBeforeHeard < 2 * lapseNanos) {
            entry.metTwo = Optional.of(nanos);
        }
        entry.runBefore = entry.status.run();
        entry.runBeforeHeard = entry.heard;
    }

    /**
     * Records whether the broker is connected. While it is not, nothing is heard, and no status ages.
     *
     * @param now whether it is
     * @param nanos since when, by a monotonic clock
     */
    public synchronized void connected(boolean now, long nanos) {
        if (now == deafSince.isEmpty()) {
            return;
        }
        if (now) {
            long deaf = nanos - deafSince.get();
            entries.values().forEach(entry -> entry.heard += deaf);
        }
        deafSince = now ? Optional.empty() : Optional.of(nanos);
    }

    /**
     * All rigs.
     *
     * @param nanos now, by a monotonic clock
     * @return in the order of {@link ShelfRow#ORDER}
     */
    public synchronized List<ShelfRow> rows(long nanos) {
        long now = deafSince.orElse(nanos);
        return entries.values().stream()
                .map(entry -> row(entry, now))
                .sorted(ShelfRow.ORDER)
                .toList();
    }

    private ShelfRow row(Entry entry, long nanos) {
        long age = Math.max(0, nanos - entry.heard);
        boolean old = age >= lapseNanos;
        boolean tells = entry.status.online() && entry.status.at().isPresent();
        boolean twice = entry.metTwo.map(met -> nanos - met < 2 * lapseNanos).orElse(false);
        return new ShelfRow(entry.status, Standing.of(entry.status, old), tells ? age / 1e9 : Double.NaN, twice);
    }

    /**
     * Whether a rig counts as lost only because of the time in its retained status, so that its next report may prove otherwise.
     *
     * @return true until each has reported, or is known to be fresh
     */
    public synchronized boolean isUnsure(long nanos) {
        return entries.values().stream()
                .anyMatch(
                        entry -> entry.status.online() && entry.behind.isEmpty() && nanos - entry.heard >= lapseNanos);
    }

    /**
     * How many messages were dropped because they came from more than {@link #MOST} rigs.
     *
     * @return 0 if all rigs are shown
     */
    public synchronized long left() {
        return left;
    }
}
