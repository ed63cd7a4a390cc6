package dev.lampwright.endtoend;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Folders;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.eclipse.paho.client.mqttv3.MqttException;

/**
 * Measures the package from outside and prints the figures; not a test. A real Mosquitto on loopback, and a controller in memory behind a
 * pseudo-terminal; the daemon as started by the package, with an archive of classes made on the spot. Run it after {@code mvn package},
 * from the folder {@code daemon}; it takes three minutes plus the given number, by default ten:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.endtoend.Figures 10</pre>
 *
 * <p>It prints, in this order:
 *
 * <ul>
 * <li>what an idle Java runtime uses with the same options: ms from its start to its first line, and memory;
 * <li>from the start of the process to its first frame at the controller, in ms, over ten starts. A process sends nothing before it is a
 * second old, because nobody knows how the light flickered before;
 * <li>what it uses after running this many minutes, see {@link Footprint};
 * <li>from just before a fault is published at QoS 1 to its first whole frame at the controller, in ms, over 200 faults that come at any
 * time within a frame, with 60 pixels at 500 000 baud: from still light, and from moving light, where the line may be busy with the
 * previous frame. The frame takes about a millisecond in {@code socat} and the loopback socket behind it;
 * <li>sizes of jar and package, and the verdict of {@code systemd-analyze security} on the service.
 * </ul>
 */
final class Figures {
    private static final int STARTS = 10;
    private static final String USUAL_MINUTES = "10";
    private static final int BAUD = 500_000;

    private Figures() {}

    /**
     * Measures and prints.
     *
     * @param args how many minutes to run before memory is measured; 10 by default
     */
    public static void main(String[] args) throws IOException, InterruptedException, MqttException {
        double minutes = Double.parseDouble(args.length == 0 ? USUAL_MINUTES : args[0]);
        Path folder = Files.createTempDirectory("lampwright-figures");
        try {
            Footprint footprint = Footprint.prepare(folder);
            BareRuntime.print(Footprint.OPTIONS, Footprint.ENVIRONMENT);
            print("start to first frame", starts(folder, footprint));
            footprint.print(minutes);
            try (FaultFigures faults = new FaultFigures(folder, footprint)) {
                print("fault to first frame, from light that stands still", faults.millis(FaultFigures.STILL));
                print("fault to first frame, from light that moves", faults.millis(FaultFigures.MOVING));
            }
            Packaged.print();
        } finally {
            Folders.delete(folder);
        }
    }

    private static double[] starts(Path folder, Footprint footprint) {
        double[] millis = new double[STARTS];
        try (Mosquitto broker = Mosquitto.start();
                PtyController controller = PtyController.pluggedIn(folder)) {
            Path config = new Birch(broker).configure(folder, controller.port(), BAUD);
            for (int i = 0; i < STARTS; i++) {
                millis[i] = start(config, controller, footprint);
            }
        }
        return millis;
    }

    private static double start(Path config, PtyController controller, Footprint footprint) {
        controller.recording().clear();
        long started = System.nanoTime();
        try (RunningDaemon daemon = footprint.start(config)) {
            Await.until("the first frame", () -> first(controller) > 0);
            daemon.terminate();
        }
        return (first(controller) - started) / 1e6;
    }

    /** When the first frame of the host came, in ns; 0 if none has. */
    private static long first(PtyController controller) {
        return controller.recording().entries().stream()
                .filter(Entry::fromHost)
                .mapToLong(Entry::nanos)
                .findFirst()
                .orElse(0);
    }

    static void print(String what, double[] millis) {
        Arrays.sort(millis);
        System.out.printf(
                Locale.ROOT,
                "%s: p50 %.1f ms, p99 %.1f ms, most %.1f ms of %d%n",
                what,
                millis[(millis.length - 1) / 2],
                millis[(int) Math.ceil(0.99 * millis.length) - 1],
                millis[millis.length - 1],
                millis.length);
    }
}
