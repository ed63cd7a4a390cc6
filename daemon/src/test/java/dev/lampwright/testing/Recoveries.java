package dev.lampwright.testing;

import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** How soon after each trouble the light was right again. */
public final class Recoveries {
    private final Map<String, Figures> byKind = new TreeMap<>();
    private long inconclusive;

    private static final class Figures {
        private int count;
        private long worstNanos;
    }

    /**
     * Records a recovery.
     *
     * @param kind of what
     * @param promise the promised time
     * @param nanos the actual time
     * @param stoodStillNanos for how long of that this machine did not let runnable threads run
     * @return what is wrong, if anything is
     */
    public Optional<String> add(String kind, Duration promise, long nanos, long stoodStillNanos) {
        Figures figures = byKind.computeIfAbsent(kind, any -> new Figures());
        figures.count++;
        figures.worstNanos = Math.max(figures.worstNanos, nanos);
        if (nanos <= promise.toNanos()) {
            return Optional.empty();
        }
        if (nanos - stoodStillNanos <= promise.toNanos()) {
            inconclusive++;
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "after %s light was right again only after %.2f s, of which the machine stood still for %.2f s",
                kind,
                nanos * 1e-9,
                stoodStillNanos * 1e-9));
    }

    /** Those that came too late on a machine that stood still so long that the daemon is not to blame. */
    public long inconclusive() {
        return inconclusive;
    }

    /** A line for each kind: how often, and the worst. */
    @Override
    public String toString() {
        StringBuilder lines = new StringBuilder();
        byKind.forEach((kind, figures) -> lines.append(String.format(
                Locale.ROOT, "  %4d × %-40s worst %.2f s%n", figures.count, kind, figures.worstNanos * 1e-9)));
        return lines.toString();
    }
}
