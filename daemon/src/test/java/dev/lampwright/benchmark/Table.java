package dev.lampwright.benchmark;

import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.Formatter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.util.Statistics;

/** Results as a table in Markdown. */
final class Table {
    private static final String ALLOCATED = "gc.alloc.rate.norm";

    private final Map<String, Statistics> micros = new LinkedHashMap<>();
    private final Map<String, Double> bytes = new LinkedHashMap<>();

    /**
     * Adds times.
     *
     * @param results with time samples in µs
     */
    void addTimes(Collection<RunResult> results) {
        results.forEach(result ->
                micros.put(name(result.getParams()), result.getPrimaryResult().getStatistics()));
    }

    /**
     * Adds allocations.
     *
     * @param results with the bytes allocated per turn
     */
    void addAllocations(Collection<RunResult> results) {
        results.forEach(result -> bytes.put(
                name(result.getParams()),
                result.getSecondaryResults().get(ALLOCATED).getScore()));
    }

    /**
     * Formats the results.
     *
     * @return a line for each benchmark, and one about the machine
     */
    @Override
    public String toString() {
        Formatter out = new Formatter(Locale.ROOT);
        out.format("%n| what | median, µs | 99 %%, µs | allocated, bytes |%n| --- | --: | --: | --: |%n");
        micros.forEach((name, times) -> out.format(
                "| %s | %.2f | %.2f | %.0f |%n",
                name, times.getPercentile(50), times.getPercentile(99), bytes.get(name)));
        out.format(
                "%nJava %s, %d cores, load %.1f at the end%n",
                Runtime.version(),
                Runtime.getRuntime().availableProcessors(),
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        return out.toString();
    }

    private static String name(BenchmarkParams params) {
        String method = params.getBenchmark().replaceFirst(".*\\.(\\w+)Benchmark\\.", "$1 ");
        return params.getParamsKeys().stream()
                .map(params::getParam)
                .reduce(method, (text, value) -> text + ' ' + value);
    }
}
