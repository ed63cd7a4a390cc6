package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A service that is killed and restarted as fast as it comes up does not flash. Source: WCAG 2.2, success criterion 2.3.1. */
@Tag("alone")
class RestartIT {
    private static final int RESTARTS = 4;
    /** The start of a process is known to a hundredth of a second. */
    private static final long QUIET_NANOS = TimeUnit.MILLISECONDS.toNanos(980);

    /** The pixels of a strip in one colour, green first. */
    private static final List<Integer> RED = strip(0, 255, 0);

    private static final List<Integer> BLUE = strip(0, 0, 255);

    /** Each look starts a process. */
    private static final Duration LONG = Duration.ofSeconds(40);

    @TempDir
    private Path folder;

    @Test
    @Timeout(120)
    void theStripIsLeftAloneUntilTheProcessIsASecondOld() throws IOException {
        try (PtyController controller = PtyController.pluggedIn(folder)) {
            Path config = folder.resolve("rowan.toml");
            for (int restart = 0; restart < RESTARTS; restart++) {
                Files.writeString(config, config(controller.port(), restart % 2 == 0 ? "white" : "black"));
                controller.recording().clear();
                long started = System.nanoTime();
                try (RunningDaemon daemon = RunningDaemon.start(config)) {
                    Await.until("light", () -> controller.recording().lastIs(Entry::fromHost));
                    daemon.signal("KILL");
                }
                List<Entry> shown = controller.recording().entries();
                Entry first = shown.stream().filter(Entry::fromHost).findFirst().orElseThrow();
                assertTrue(first.nanos() - started >= QUIET_NANOS, (first.nanos() - started) / 1_000_000 + " ms");
                assertEquals(
                        1,
                        shown.stream()
                                .filter(Entry::fromHost)
                                .map(Entry::strip)
                                .distinct()
                                .count());
            }
        }
    }

    /** Killed while it may be writing; then with a damaged file. */
    @Test
    @Timeout(120)
    void whatPeopleAskedForSurvivesAKill() throws IOException {
        try (PtyController controller = PtyController.pluggedIn(folder);
                Mosquitto broker = Mosquitto.start()) {
            Path config = Files.writeString(
                    folder.resolve("rowan.toml"),
                    "desk.keep = true\n" + config(broker.url().toString(), controller.port(), "blue"));
            Map<String, String> environment = Map.of("STATE_DIRECTORY", folder.toString());
            try (RunningDaemon daemon = RunningDaemon.start(config, environment)) {
                Await.until("the kept file", () -> {
                    broker.publish(
                            "lampwright/ask/pixels",
                            "{\"pixels\": {\"strip\": \"red\"}, \"until\": \"changed\"}",
                            false);
                    return kept().isPresent();
                });
                daemon.signal("KILL");
            }
            controller.recording().clear();
            try (RunningDaemon daemon = RunningDaemon.start(config, environment)) {
                Await.until("red light", () -> shows(controller, RED));
                assertEquals(
                        Set.of(true),
                        controller.recording().entries().stream()
                                .filter(Entry::fromHost)
                                .map(entry -> entry.strip().equals(RED))
                                .collect(Collectors.toSet()),
                        "from the first frame on");
                assertEquals(List.of(), daemon.linesWith(0, "WARN"));
            }
            Path kept = kept().orElseThrow();
            Files.writeString(kept, Files.readString(kept).substring(0, 30));
            try (RunningDaemon daemon = RunningDaemon.start(config, environment)) {
                Await.until("blue light", () -> shows(controller, BLUE));
                assertEquals(
                        1,
                        daemon.linesWith(0, kept + ": is cut off, or is not JSON; ")
                                .size(),
                        daemon.log()::toString);
            }
        }
    }

    /** A job and a fault continue across a kill; the command reads what the daemon has kept. */
    @Test
    @Timeout(120)
    void whatHasHappenedSurvivesAKill() throws IOException, InterruptedException {
        try (PtyController controller = PtyController.pluggedIn(folder);
                Mosquitto broker = Mosquitto.start()) {
            String url = broker.url().toString();
            Path config = Files.writeString(
                    folder.resolve("rowan.toml"),
                    "printer.fault_text.topic = \"shop/rowan/words\"\n"
                            + config(url, controller.port(), "blue")
                                    .replace(
                                            "idle =",
                                            "fault = [\"ALARM\"], printing = [\"RUN\"], done = [\"END\"], idle ="));
            Map<String, String> environment = Map.of("STATE_DIRECTORY", folder.toString());
            try (RunningDaemon daemon = RunningDaemon.start(config, environment)) {
                publishUntil(broker, "IDLE", config, told -> told.path("states").size() > 0);
                broker.publish("shop/rowan/job", "RUN", false);
                broker.publish("shop/rowan/words", "bed too cold", false);
                broker.publish("shop/rowan/job", "ALARM", false);
                Await.until(
                        "the fault acknowledged",
                        LONG,
                        () -> command("tell", "--broker", url, "acknowledge").status() == 0);
                Await.until(
                        "the kept fault",
                        LONG,
                        () -> history(config).at("/faults/0/acknowledged").isObject());
                daemon.signal("KILL");
            }
            JsonNode fault = history(config).at("/faults/0");
            assertEquals("bed too cold", fault.path("words").asText());
            assertEquals("mqtt", fault.at("/acknowledged/way").asText());
            assertTrue(fault.at("/acknowledged/by").asText().startsWith("command line of "), fault.toString());
            String began = history(config).at("/jobs/0/began").asText();
            try (RunningDaemon daemon = RunningDaemon.start(config, environment)) {
                publishUntil(
                        broker,
                        "END",
                        config,
                        told -> told.at("/jobs/0/end").asText().equals("done"));
                assertEquals(List.of(), daemon.linesWith(0, "WARN"));
            }
            JsonNode job = history(config).path("jobs");
            assertEquals(1, job.size(), job.toString());
            assertEquals(began, job.at("/0/began").asText());
            assertTrue(
                    job.at("/0/end_unseen").asBoolean()
                            && job.at("/0/unwatched_s").asDouble() > 0,
                    job.toString());
            String shown = command("history", config.toString()).output();
            assertTrue(shown.contains("done, its end was not seen"), shown);
            assertTrue(shown.contains("bed too cold") && !shown.contains("\u001b"), shown);
        }
    }

    /** A daemon that has just started hears it as soon as it has subscribed. */
    private void publishUntil(Mosquitto broker, String state, Path config, Predicate<JsonNode> told) {
        Await.until(state, LONG, () -> {
            broker.publish("shop/rowan/job", state, false);
            return told.test(history(config));
        });
    }

    /** As JSON; empty as long as none is kept. */
    private JsonNode history(Path config) {
        Child child = command("history", config.toString(), "--json");
        return Json.read(child.status() == 0 ? child.output() : "{}").orElseThrow();
    }

    private Child command(String... words) {
        List<String> command = new ArrayList<>(List.of("env", "STATE_DIRECTORY=" + folder));
        command.addAll(RunningDaemon.command(List.of(), words));
        try {
            return Child.run(command);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    private Optional<Path> kept() {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".asks.json")).findFirst();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean shows(PtyController controller, List<Integer> strip) {
        return controller
                .recording()
                .lastIs(entry -> entry.fromHost() && entry.strip().equals(strip));
    }

    private static List<Integer> strip(Integer... pixel) {
        return Stream.generate(() -> List.of(pixel))
                .limit(8)
                .flatMap(List::stream)
                .toList();
    }

    private static String config(Path port, String colour) {
        return config("mqtt://127.0.0.1:9", port, colour);
    }

    private static String config(String broker, Path port, String colour) {
        return """
                broker.url = "%s"
                controller = { port = "%s", baud = 500000 }
                strip.pixels = 8
                printer.state = { topic = "shop/rowan/job", idle = ["IDLE"] }
                [looks.plain]
                layers = [{ colour = "%s" }]
                [[cues]]
                look = "plain"
                fade_s = 0
                """.formatted(broker, port, colour);
    }
}
