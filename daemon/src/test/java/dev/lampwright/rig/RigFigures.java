package dev.lampwright.rig;

import dev.lampwright.testing.Folders;
import dev.lampwright.testing.Mosquitto;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * Measures many rigs in one process and prints the figures, those of a single one first; not a test. Each rig has 300 pixels, light that
 * moves and 60 frames a second, a printer that reports twice a second through a real Mosquitto, and an in-memory controller, whose
 * processor time is not counted. The processes run one after the other with the package's options for several rigs. Run it after
 * {@code mvn package}, in the folder {@code daemon}; the arguments are the seconds for each, then the numbers of rigs:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.rig.RigFigures 60 1 64</pre>
 *
 * <p>Options of {@code java} may follow, such as {@code -XX:TieredStopAtLevel=4} for both compilers; they come last.
 */
final class RigFigures {
    private static final Path PACKAGING = Path.of("..", "systemd");
    private static final List<String> OPTIONS = List.of("java.options", "run.options", "shop.options");
    private static final long MESSAGE_EVERY_MS = 500;

    private RigFigures() {}

    /**
     * Measures and prints.
     *
     * @param args seconds, numbers of rigs, and options of {@code java}
     */
    public static void main(String[] args) throws IOException, InterruptedException, MqttException {
        List<String> options = new ArrayList<>();
        List<Integer> numbers = new ArrayList<>();
        for (String arg : args) {
            if (arg.startsWith("-")) {
                options.add(arg);
            } else {
                numbers.add(Integer.valueOf(arg));
            }
        }
        List<Integer> counts = numbers.size() > 1 ? numbers.subList(1, numbers.size()) : List.of(1, 64);
        for (int count : counts) {
            measure(numbers.isEmpty() ? 60 : numbers.get(0), count, options);
        }
    }

    private static void measure(int seconds, int count, List<String> options)
            throws IOException, InterruptedException, MqttException {
        Path folder = Files.createTempDirectory("lampwright-rigs");
        try (Mosquitto broker = Mosquitto.start();
                MqttClient printers =
                        new MqttClient("tcp://127.0.0.1:" + broker.port(), "printers", new MemoryPersistence())) {
            printers.connect();
            Process process = process(folder, broker, seconds, count, options);
            for (int message = 0; process.isAlive(); message++) {
                for (int rig = 0; rig < count; rig++) {
                    String topic = "shop/" + RigFiguresProcess.name(rig);
                    publish(printers, topic + "/job", "RUN");
                    publish(printers, topic + "/heat", "{\"now\":" + (20 + message % 200) + ",\"set\":220}");
                }
                process.waitFor(MESSAGE_EVERY_MS, TimeUnit.MILLISECONDS);
            }
            printers.disconnect();
        } finally {
            Folders.delete(folder);
        }
    }

    private static void publish(MqttClient printers, String topic, String payload) throws MqttException {
        printers.publish(topic, payload.getBytes(StandardCharsets.UTF_8), 0, false);
    }

    private static Process process(Path folder, Mosquitto broker, int seconds, int count, List<String> options)
            throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        OPTIONS.forEach(file -> command.add("@" + PACKAGING.resolve(file)));
        command.addAll(options);
        command.addAll(List.of(
                "-Dlampwright.log.level=WARN",
                "-cp",
                System.getProperty("java.class.path"),
                RigFiguresProcess.class.getName(),
                folder.toString(),
                broker.url().toString(),
                Integer.toString(seconds),
                Integer.toString(count)));
        ProcessBuilder builder = new ProcessBuilder(command).inheritIO();
        builder.environment().put("MALLOC_ARENA_MAX", "1");
        return builder.start();
    }
}
