package dev.lampwright.soak;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * The rigs that have no trouble while another one has. Their light is judged all the time by their watchers; this judges that they left out no
 * frame and did what was asked, each with the time taken off for which the machine let nobody run.
 */
final class Neighbours {
    /** How soon an ask is to be done; by the soak's own measure of light that is right again. */
    private static final Duration ANSWERED = Duration.ofSeconds(2);

    private static final long TICK_NANOS = TimeUnit.SECONDS.toNanos(1) / Rowan.FRAMES_PER_S;
    /**
     * Two cores serve this process, the daemon's threads and as many brokers and ports as there are rigs: now and then one of them gets to run too late for a tick
     * although the heartbeat does not. From experience, no source.
     */
    private static final long LATE_ONE_IN = 50;

    /** Of the frames that are due. The figures are read a moment before or after the clock. */
    private static final double LEAST_SHARE = 0.9;

    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    private final Bench bench;
    private final List<RigBench> rigs;
    private final Ordeal.Judges judges;
    private final String trouble;
    private final long began = System.nanoTime();
    private final Map<String, Double> before;

    /**
     * Begins to judge.
     *
     * @param bench the process
     * @param rigs which
     * @param judges who judge
     * @param trouble what another rig has, for whoever reads
     */
    Neighbours(Bench bench, List<RigBench> rigs, Ordeal.Judges judges, String trouble) throws IOException {
        this.bench = bench;
        this.rigs = rigs;
        this.judges = judges;
        this.trouble = trouble;
        before = Figure.ofFrames(bench.metricsPort());
    }

    /** Asks each of them something that changes no light, by the page. */
    void ask() {
        for (RigBench rig : rigs) {
            long from = System.nanoTime();
            String answer = answer(rig.name());
            long to = System.nanoTime();
            long late = to - from - ANSWERED.toNanos() - judges.heartbeat().sumBetween(from, to);
            if (!answer.isEmpty() || late > 0) {
                judges.violations()
                        .add(String.format(
                                Locale.ROOT,
                                "%s during %s: an ask was not done but %s after %.2f s",
                                rig.name(),
                                trouble,
                                answer.isEmpty() ? "late," : answer,
                                (to - from) * 1e-9));
            }
        }
    }

    /** What was wrong with the answer; empty if the ask is done. */
    private String answer(String rig) {
        HttpRequest request = HttpRequest.newBuilder(
                        URI.create("http://127.0.0.1:" + bench.pagePort() + "/" + rig + "/ask/brightness"))
                .timeout(ANSWERED.multipliedBy(5))
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("1"))
                .build();
        try {
            HttpResponse<String> response = CLIENT.send(request, BodyHandlers.ofString());
            return response.statusCode() == 200 ? "" : response.statusCode() + " " + response.body();
        } catch (IOException e) {
            return e.toString();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return e.toString();
        }
    }

    /**
     * Judges the frames since the beginning.
     *
     * @return how many were left out, of all of them
     */
    long judge() {
        try {
            Map<String, Double> after = Figure.ofFrames(bench.metricsPort());
            long now = System.nanoTime();
            long stood = judges.heartbeat().sumBetween(began, now);
            return rigs.stream()
                    .mapToLong(rig -> judge(rig, after, now - began, stood))
                    .sum();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private long judge(RigBench rig, Map<String, Double> after, long nanos, long stood) {
        long left = count(rig, "lampwright_frames_left_out_total", after);
        long made = count(rig, "lampwright_frames_total", after);
        long allowed = (stood + TICK_NANOS - 1) / TICK_NANOS + Math.max(1, nanos / TICK_NANOS / LATE_ONE_IN);
        if (left > allowed || made + allowed < LEAST_SHARE * nanos / TICK_NANOS) {
            judges.violations()
                    .add(String.format(
                            Locale.ROOT,
                            "%s during %s: made %d frames and left out %d in %.2f s, of which the machine stood still for %.2f s",
                            rig.name(),
                            trouble,
                            made,
                            left,
                            nanos * 1e-9,
                            stood * 1e-9));
        }
        return left;
    }

    private long count(RigBench rig, String name, Map<String, Double> after) {
        String figure = name + "{rig=\"" + rig.name() + "\"}";
        return Math.round(after.getOrDefault(figure, 0.0) - before.getOrDefault(figure, 0.0));
    }
}
