package dev.lampwright.metrics;

import dev.lampwright.engine.Daemon;
import dev.lampwright.rig.Rig;
import dev.lampwright.rig.Rigs;
import io.prometheus.metrics.model.snapshots.CounterSnapshot;
import io.prometheus.metrics.model.snapshots.CounterSnapshot.CounterDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot.GaugeDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.HistogramSnapshot;
import io.prometheus.metrics.model.snapshots.HistogramSnapshot.HistogramDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricMetadata;
import io.prometheus.metrics.model.snapshots.MetricSnapshot;
import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * The figures of a whole process at one moment. Those of a single daemon are unchanged; those of several rigs have the label {@code rig},
 * and additional figures show whether each rig runs, and whether its file is valid.
 */
final class ProcessMetrics {
    private static final String RIG = "rig";

    private final Supplier<MetricSnapshots> figures;

    private ProcessMetrics(Supplier<MetricSnapshots> figures) {
        this.figures = figures;
    }

    /** The figures of the only daemon of a process. */
    static ProcessMetrics of(Daemon daemon) {
        DaemonMetrics metrics = new DaemonMetrics(daemon, System::nanoTime);
        return new ProcessMetrics(() -> new MetricSnapshots(metrics.now()));
    }

    /** Those of several rigs. */
    static ProcessMetrics of(Rigs rigs) {
        return new ProcessMetrics(() -> of(rigs.all(), System::nanoTime));
    }

    private static MetricSnapshots of(List<Rig> rigs, LongSupplier clock) {
        Map<String, Joined> joined = new LinkedHashMap<>();
        for (Rig rig : rigs) {
            Labels label = Labels.of(RIG, rig.name());
            rig.daemon()
                    .ifPresent(daemon -> new DaemonMetrics(daemon, clock)
                            .now()
                            .forEach(one -> joined(joined, one.getMetadata()).add(one, label)));
        }
        List<MetricSnapshot> all = new ArrayList<>();
        joined.values().forEach(one -> all.add(one.snapshot()));
        all.add(ofRigs(
                "rig_runs",
                "1 while the rig makes frames.",
                rigs,
                rig -> rig.daemon().isPresent() && !rig.isStill()));
        all.add(ofRigs(
                "rig_file_rejected",
                "1 while the rig's file is not valid.",
                rigs,
                rig -> !rig.mistakes().isEmpty()));
        return new MetricSnapshots(all);
    }

    private static Joined joined(Map<String, Joined> joined, MetricMetadata about) {
        return joined.computeIfAbsent(about.getName(), name -> new Joined(about));
    }

    private static GaugeSnapshot ofRigs(String name, String help, List<Rig> rigs, Predicate<Rig> isSo) {
        GaugeSnapshot.Builder gauge =
                GaugeSnapshot.builder().name(DaemonMetrics.PREFIX + name).help(help);
        rigs.forEach(rig -> gauge.dataPoint(GaugeDataPointSnapshot.builder()
                .labels(Labels.of(RIG, rig.name()))
                .value(isSo.test(rig) ? 1 : 0)
                .build()));
        return gauge.build();
    }

    /** Reads all figures. */
    MetricSnapshots now() {
        return figures.get();
    }

    /** One figure of all rigs. */
    private static final class Joined {
        private final MetricMetadata about;
        private final List<CounterDataPointSnapshot> counters = new ArrayList<>();
        private final List<GaugeDataPointSnapshot> gauges = new ArrayList<>();
        private final List<HistogramDataPointSnapshot> histograms = new ArrayList<>();

        Joined(MetricMetadata about) {
            this.about = about;
        }

        /** Adds the values of one rig. */
        void add(MetricSnapshot one, Labels rig) {
            if (one instanceof CounterSnapshot counter) {
                counter.getDataPoints()
                        .forEach(point -> counters.add(CounterDataPointSnapshot.builder()
                                .labels(rig.merge(point.getLabels()))
                                .value(point.getValue())
                                .build()));
            } else if (one instanceof GaugeSnapshot gauge) {
                gauge.getDataPoints()
                        .forEach(point -> gauges.add(GaugeDataPointSnapshot.builder()
                                .labels(rig.merge(point.getLabels()))
                                .value(point.getValue())
                                .build()));
            } else if (one instanceof HistogramSnapshot histogram) {
                histogram
                        .getDataPoints()
                        .forEach(point -> histograms.add(HistogramDataPointSnapshot.builder()
                                .labels(rig.merge(point.getLabels()))
                                .classicHistogramBuckets(point.getClassicBuckets())
                                .sum(point.getSum())
                                .build()));
            } else {
                throw new IllegalArgumentException(about.getName() + " is of a kind that cannot be joined");
            }
        }

        MetricSnapshot snapshot() {
            if (!counters.isEmpty()) {
                return new CounterSnapshot(about, counters);
            }
            return histograms.isEmpty() ? new GaugeSnapshot(about, gauges) : new HistogramSnapshot(about, histograms);
        }
    }
}
