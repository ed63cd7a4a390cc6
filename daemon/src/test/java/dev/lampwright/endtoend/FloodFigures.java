package dev.lampwright.endtoend;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Folders;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * Floods the jar with messages and prints the effects; not a test. A real Mosquitto on loopback, the daemon with the options of the service
 * and 60 frames a second, a strip of 30 pixels, and a controller in memory behind a pseudo-terminal. First a while without messages, then
 * equally long with 10 000 messages a second of temperatures in JSON, each of which must be read. In the meantime a fault is published
 * about once a second. Run it after {@code mvn package}, from the folder {@code daemon}, with the seconds of each part, by default 60:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.endtoend.FloodFigures 60</pre>
 */
final class FloodFigures {
    private static final String[] SERVICE_OPTIONS = {"-Xmx64m", "-XX:+UseSerialGC"};
    private static final int PER_SECOND = 10_000;
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final String PREFIX = "lampwright_";

    private final Bench bench;
    private final URI metrics;
    private final HttpClient http = HttpClient.newHttpClient();

    private FloodFigures(Bench bench, int metricsPort) {
        this.bench = bench;
        metrics = URI.create("http://127.0.0.1:" + metricsPort + "/metrics");
    }

    /**
     * Measures and prints.
     *
     * @param args seconds of each part
     */
    public static void main(String[] args) throws IOException, MqttException, InterruptedException {
        double seconds = args.length > 0 ? Double.parseDouble(args[0]) : 60;
        Path folder = Files.createTempDirectory("lampwright-flood");
        int port = FreePort.find();
        List<String> lines = new ArrayList<>(Birch.withoutFlashLimit());
        lines.addAll(List.of("[metrics]", "port = " + port));
        try (Bench bench = new Bench(folder, Mosquitto.start(), lines, SERVICE_OPTIONS)) {
            FloodFigures figures = new FloodFigures(bench, port);
            figures.part("quiet", 0, seconds);
            figures.part("flood", PER_SECOND, seconds);
        } finally {
            Folders.delete(folder);
        }
    }

    private void part(String name, int perSecond, double seconds)
            throws IOException, MqttException, InterruptedException {
        String before = read();
        Faults faults = new Faults();
        Thread thread = new Thread(faults, "faults");
        thread.start();
        int sent = perSecond > 0 ? flood(perSecond, seconds) : rest(seconds);
        faults.end();
        thread.join();
        String after = read();
        System.out.printf(
                Locale.ROOT,
                "%s, %.0f s: %d messages sent, %.0f heard; %.0f frames made, %.0f left out; late by 1 ms or less %.3f %%, by a frame or"
                        + " less %.3f %%; %.1f MiB resident; fault to first frame p50 %.1f ms, most %.1f ms of %d%n",
                name,
                seconds,
                sent + faults.published(),
                gained(before, after, "printer_messages_total"),
                gained(before, after, "frames_total"),
                gained(before, after, "frames_left_out_total"),
                100 * lateShare(before, after, 0.001),
                100 * lateShare(before, after, 1 / 60.0),
                bench.daemon().residentKibAsItIs() / 1024.0,
                faults.median(),
                faults.most(),
                faults.count());
    }

    private int flood(int perSecond, double seconds) throws IOException {
        try (Flood flood = Flood.to(bench.broker().port())) {
            return flood.publish(Birch.HEAT, FloodFigures::heat, perSecond, seconds);
        }
    }

    private static int rest(double seconds) {
        long end = System.nanoTime() + Math.round(seconds * 1e9);
        while (System.nanoTime() - end < 0) {
            Await.pause();
        }
        return 0;
    }

    private static String heat(int number) {
        double bed = 22 + number % 400 / 10.0;
        return "{\"plate\":{\"now\":" + bed + ",\"set\":60},\"tip\":{\"now\":" + 3 * bed + ",\"set\":215},\"n\":"
                + number + "}";
    }

    private String read() throws IOException, InterruptedException {
        return http.send(HttpRequest.newBuilder(metrics).build(), BodyHandlers.ofString())
                .body();
    }

    private static double gained(String before, String after, String name) {
        return value(after, PREFIX + name) - value(before, PREFIX + name);
    }

    private static double lateShare(String before, String after, double seconds) {
        double all = gained(before, after, "frame_late_seconds_count");
        return upTo(after, seconds) == 0 ? Double.NaN : (upTo(after, seconds) - upTo(before, seconds)) / all;
    }

    /** How many frames were late by no more than the largest bound that is not above a given time. */
    private static double upTo(String text, double seconds) {
        return text.lines()
                .filter(line -> line.startsWith(PREFIX + "frame_late_seconds_bucket") && !line.contains("Inf"))
                .filter(line -> Double.parseDouble(line.split("\"", -1)[1]) <= seconds)
                .mapToDouble(FloodFigures::last)
                .max()
                .orElse(0);
    }

    private static double value(String text, String name) {
        return text.lines()
                .filter(line -> line.startsWith(name + " "))
                .mapToDouble(FloodFigures::last)
                .findFirst()
                .orElseThrow();
    }

    private static double last(String line) {
        return Double.parseDouble(line.substring(line.lastIndexOf(' ') + 1));
    }

    /** Publishes a fault about once a second, and times its first frame. */
    private final class Faults implements Runnable {
        private static final long EVERY_NANOS = 1_000_000_000;

        private final List<Double> millis = new ArrayList<>();
        private volatile boolean isOver;

        @Override
        public void run() {
            try (MqttClient printer =
                    new MqttClient("tcp://127.0.0.1:" + bench.broker().port(), "birch", new MemoryPersistence())) {
                printer.connect();
                while (!isOver) {
                    long begun = System.nanoTime();
                    publish(printer, Birch.HELD);
                    bench.awaitPicture(Birch.still(Birch.HELD), PATIENCE);
                    bench.controller().recording().clear();
                    long published = System.nanoTime();
                    publish(printer, Birch.FAULT);
                    bench.awaitPicture(Birch.still(Birch.FAULT), PATIENCE);
                    millis.add((firstFault() - published) / 1e6);
                    while (System.nanoTime() - begun < EVERY_NANOS) {
                        Await.pause();
                    }
                }
                printer.disconnect();
            } catch (MqttException e) {
                throw new UncheckedIOException(new IOException(e));
            }
        }

        private void publish(MqttClient printer, String phase) throws MqttException {
            printer.publish(Birch.JOB, Birch.job(phase, 0).getBytes(StandardCharsets.UTF_8), 1, false);
        }

        private long firstFault() {
            return bench.controller().recording().entries().stream()
                    .filter(shown -> Birch.still(Birch.FAULT).isOn(shown.strip()))
                    .mapToLong(shown -> shown.nanos())
                    .findFirst()
                    .orElseThrow();
        }

        void end() {
            isOver = true;
        }

        int count() {
            return millis.size();
        }

        int published() {
            return 2 * millis.size();
        }

        double median() {
            double[] sorted = sorted();
            return sorted[(sorted.length - 1) / 2];
        }

        double most() {
            return Arrays.stream(sorted()).max().orElse(Double.NaN);
        }

        private double[] sorted() {
            return millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        }
    }
}
