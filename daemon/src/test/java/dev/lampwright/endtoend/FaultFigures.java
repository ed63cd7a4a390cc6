package dev.lampwright.endtoend;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * How long a fault takes from its message to its light: 60 pixels at 500 000 baud, a printer with a still or moving look until then. The
 * flash limit is off, because 200 faults in a few minutes are more than it lets through.
 */
final class FaultFigures implements AutoCloseable {
    /** A still look. */
    static final String STILL = "WAIT";
    /** A look that differs in each frame. */
    static final String MOVING = "RUN";

    private static final String FAULT = "ALARM";
    private static final int FAULTS = 200;
    private static final int SHORTEST_REST_NANOS = 50_000_000;
    private static final int LONGER_NANOS = 50_000_000;
    private static final List<Integer> RED = IntStream.range(0, 60)
            .boxed()
            .flatMap(pixel -> List.of(0, 255, 0).stream())
            .toList();

    private final Mosquitto broker = Mosquitto.start();
    private final PtyController controller;
    private final RunningDaemon daemon;

    /**
     * Starts a daemon and waits until it lights.
     *
     * @param folder for files
     * @param footprint starts it as the package does
     */
    FaultFigures(Path folder, Footprint footprint) throws IOException {
        controller = PtyController.pluggedIn(folder);
        daemon = footprint.start(configure(folder));
        Await.until("light", () -> controller.recording().lastIs(Entry::fromHost));
    }

    private Path configure(Path folder) throws IOException {
        return Files.write(
                folder.resolve("rowan.toml"),
                List.of(
                        "broker.url = \"" + broker.url() + "\"",
                        "controller = { port = \"" + controller.port() + "\", baud = 500000 }",
                        "supply.ceiling_mA = 4000",
                        "guard.allow_flashing_that_can_cause_seizures = true",
                        "strip = { pixels = 60, order = \"GRB\" }",
                        "printer.state = { topic = \"shop/rowan/job\", printing = [\"" + MOVING + "\"], held = [\""
                                + STILL + "\"], fault = [\"" + FAULT + "\"] }",
                        "looks.held.layers = [{ colour = \"orange\" }]",
                        "looks.fault.layers = [{ colour = \"red\" }]",
                        "looks.printing.layers = [{ colour = \"teal\", extent = \"band\", width_px = 10, tail_px = 30, speed_px_per_s = 45 }]",
                        "[[cues]]",
                        "state = \"fault\"",
                        "look = \"fault\"",
                        "[[cues]]",
                        "state = \"held\"",
                        "look = \"held\"",
                        "[[cues]]",
                        "state = \"printing\"",
                        "look = \"printing\""));
    }

    /**
     * Measures the times.
     *
     * @param before what the printer does until the fault comes: {@link #STILL} or {@link #MOVING}
     * @return ms from just before a fault is published, at QoS 1, to its first whole frame at the controller, for each of 200
     */
    double[] millis(String before) throws MqttException {
        SplittableRandom chance = new SplittableRandom(1);
        double[] millis = new double[FAULTS];
        try (MqttClient printer =
                new MqttClient("tcp://127.0.0.1:" + broker.port(), "rowan", new MemoryPersistence())) {
            printer.connect();
            for (int i = 0; i < FAULTS; i++) {
                publish(printer, before);
                Await.until(
                        "what was before", () -> !isRed(controller.recording().last()));
                await(System.nanoTime() + SHORTEST_REST_NANOS + chance.nextInt(LONGER_NANOS));
                controller.recording().clear();
                long published = System.nanoTime();
                publish(printer, FAULT);
                Await.until("a fault", () -> first() > 0);
                millis[i] = (first() - published) / 1e6;
            }
            printer.disconnect();
        }
        Arrays.sort(millis);
        return millis;
    }

    private static void publish(MqttClient printer, String phase) throws MqttException {
        printer.publish("shop/rowan/job", phase.getBytes(StandardCharsets.UTF_8), 1, false);
    }

    private static boolean isRed(Entry shown) {
        return shown.strip().equals(RED);
    }

    /** When the first frame of the fault came, in ns; 0 if none has. */
    private long first() {
        return controller.recording().entries().stream()
                .filter(FaultFigures::isRed)
                .mapToLong(Entry::nanos)
                .findFirst()
                .orElse(0);
    }

    private static void await(long nanos) {
        while (System.nanoTime() - nanos < 0) {
            Await.pause();
        }
    }

    @Override
    public void close() {
        daemon.close();
        controller.close();
        broker.close();
    }
}
