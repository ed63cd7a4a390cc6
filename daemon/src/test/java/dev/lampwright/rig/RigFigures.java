package dev.lampwright.rig;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.endtoend.Footprint;
import dev.lampwright.testing.Folders;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * Measures many rigs in one process and prints the figures, those of a single one first; not a test. Each rig has 300 pixels, light that
 * moves and 60 frames a second, a printer that reports twice a second through a real Mosquitto, and an in-memory controller, whose
 * processor time is not counted. The processes run one after the other with the package's options for several rigs and an archive of
 * classes like that of the package's installation. Run it after {@code mvn package}, in the folder {@code daemon}; the arguments are the
 * seconds for each, then the numbers of rigs:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.rig.RigFigures 60 1 64</pre>
 *
 * <p>Options of {@code java} may follow, such as {@code -XX:TieredStopAtLevel=4} for both compilers; they come last. Half of the seconds, but at least
 * ten, go by before anything is measured; {@value #WARM_UP}90 makes that 90. {@value #PTYS} gives each
 * rig 60 pixels and a controller of this process behind a real pseudo-terminal, which socat makes, instead:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.rig.RigFigures --ptys 60 1 8</pre>
 */
final class RigFigures {
    private static final Path PACKAGING = Path.of("..", "systemd");
    /** The jar comes first, as it does in the archive. */
    private static final String CLASS_PATH =
            Path.of("target", "lampwright.jar") + ":" + Path.of("target", "test-classes");

    private static final List<String> OPTIONS = List.of("java.options", "run.options", "shop.options");
    private static final long MESSAGE_EVERY_MS = 500;

    private static final String PTYS = "--ptys";
    private static final String WARM_UP = "--warm-up=";
    private static final int PIXELS = 300;
    private static final int PIXELS_AT_PTYS = 60;

    private RigFigures() {}

    /**
     * Measures and prints.
     *
     * @param args seconds, numbers of rigs, and options of {@code java}
     */
    public static void main(String[] args) throws IOException, InterruptedException, MqttException {
        List<String> options = new ArrayList<>();
        List<Integer> numbers = new ArrayList<>();
        boolean ptys = List.of(args).contains(PTYS);
        Optional<Integer> warmUp = Optional.empty();
        for (String arg : args) {
            if (arg.startsWith(WARM_UP)) {
                warmUp = Optional.of(Integer.valueOf(arg.substring(WARM_UP.length())));
            } else if (arg.startsWith("-") && !arg.equals(PTYS)) {
                options.add(arg);
            } else if (!arg.equals(PTYS)) {
                numbers.add(Integer.valueOf(arg));
            }
        }
        int seconds = numbers.isEmpty() ? 60 : numbers.get(0);
        List<Integer> counts = numbers.size() > 1 ? numbers.subList(1, numbers.size()) : List.of(1, 64);
        Path made = Files.createTempDirectory("lampwright-archive");
        try {
            options.add(0, "-XX:SharedArchiveFile=" + Footprint.prepare(made).archive());
            for (int count : counts) {
                measure(seconds, warmUp.orElse(Math.max(10, seconds / 2)), count, ptys, options);
            }
        } finally {
            Folders.delete(made);
        }
    }

    private static void measure(int seconds, int warmUp, int count, boolean ptys, List<String> options)
            throws IOException, InterruptedException, MqttException {
        Path folder = Files.createTempDirectory("lampwright-rigs");
        List<PtyController> controllers = new ArrayList<>();
        try (Mosquitto broker = Mosquitto.start();
                MqttClient printers =
                        new MqttClient("tcp://127.0.0.1:" + broker.port(), "printers", new MemoryPersistence())) {
            printers.connect();
            for (int rig = 0; ptys && rig < count; rig++) {
                PtyController controller =
                        new PtyController(folder.resolve(RigFiguresProcess.name(rig)), MemoryController.BOARD);
                controllers.add(controller);
                controller.plug();
            }
            Process process = process(folder, broker, seconds, warmUp, count, ptys, options);
            for (int message = 0; process.isAlive(); message++) {
                for (int rig = 0; rig < count; rig++) {
                    String topic = "shop/" + RigFiguresProcess.name(rig);
                    publish(printers, topic + "/job", "RUN");
                    publish(printers, topic + "/heat", "{\"now\":" + (20 + message % 200) + ",\"set\":220}");
                }
                controllers.forEach(controller -> controller.recording().drain());
                process.waitFor(MESSAGE_EVERY_MS, TimeUnit.MILLISECONDS);
            }
            printers.disconnect();
        } finally {
            controllers.forEach(PtyController::close);
            Folders.delete(folder);
        }
    }

    private static void publish(MqttClient printers, String topic, String payload) throws MqttException {
        printers.publish(topic, payload.getBytes(StandardCharsets.UTF_8), 0, false);
    }

    private static Process process(
            Path folder, Mosquitto broker, int seconds, int warmUp, int count, boolean ptys, List<String> options)
            throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        OPTIONS.forEach(file -> command.add("@" + PACKAGING.resolve(file)));
        command.addAll(options);
        command.addAll(List.of(
                "-Dlampwright.log.level=WARN",
                "-cp",
                CLASS_PATH,
                RigFiguresProcess.class.getName(),
                folder.toString(),
                broker.url().toString(),
                Integer.toString(seconds),
                Integer.toString(count),
                ptys ? folder + "/" : "",
                Integer.toString(ptys ? PIXELS_AT_PTYS : PIXELS),
                Integer.toString(warmUp)));
        ProcessBuilder builder = new ProcessBuilder(command).inheritIO();
        builder.environment().put("MALLOC_ARENA_MAX", "1");
        return builder.start();
    }
}
