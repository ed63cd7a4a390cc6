package dev.lampwright.metrics;

import dev.lampwright.engine.Lateness;
import io.prometheus.metrics.model.snapshots.ClassicHistogramBuckets;
import io.prometheus.metrics.model.snapshots.HistogramSnapshot;
import io.prometheus.metrics.model.snapshots.HistogramSnapshot.HistogramDataPointSnapshot;

/** How late something was, as a histogram of Prometheus. */
final class LateHistogram {
    /** From a tenth of a millisecond, which is negligible, to a quarter of a second, which is visible. */
    private static final long[] BOUNDS_MICROS = {
        100, 250, 500, 1_000, 2_500, 5_000, 10_000, 25_000, 50_000, 100_000, 250_000
    };

    private static final long NANOS_PER_MICRO = 1_000;
    private static final double MICROS_PER_SECOND = 1e6;
    private static final double NANOS_PER_SECOND = 1e9;

    private LateHistogram() {}

    /**
     * Takes a snapshot.
     *
     * @param name its name, with the unit
     * @param help what it means
     * @param lateness what was counted, in classes that are a few percent wide
     * @return the snapshot
     */
    static HistogramSnapshot of(String name, String help, Lateness lateness) {
        long total = lateness.total();
        ClassicHistogramBuckets.Builder buckets = ClassicHistogramBuckets.builder();
        long before = 0;
        for (long micros : BOUNDS_MICROS) {
            long upTo = Math.min(total, lateness.upTo(micros * NANOS_PER_MICRO));
            buckets.bucket(micros / MICROS_PER_SECOND, upTo - before);
            before = upTo;
        }
        buckets.bucket(Double.POSITIVE_INFINITY, total - before);
        return HistogramSnapshot.builder()
                .name(name)
                .help(help)
                .dataPoint(HistogramDataPointSnapshot.builder()
                        .classicHistogramBuckets(buckets.build())
                        .sum(lateness.sumNanos() / NANOS_PER_SECOND)
                        .build())
                .build();
    }
}
