package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.Mosquitto.Account;
import dev.lampwright.testing.Recording;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** How the daemon ends, and what it reports when it cannot start. */
@Timeout(60)
class EndingIT {
    /** What the product promises. */
    private static final long END_NANOS = Duration.ofSeconds(1).toNanos();

    private static final long HOLDOVER_NANOS = Duration.ofSeconds(3).toNanos();
    private static final String PASSWORD = "tallow-and-wick-42";
    private static final Account ACCOUNT = new Account("lamp", PASSWORD);

    @TempDir
    private Path folder;

    /** At the most verbose log level, and with a wrong password for a while. */
    @Test
    void leavesTheControllerAtRestAndTellsNoPassword() throws IOException {
        Path file = Files.writeString(folder.resolve("password"), PASSWORD + "\n");
        List<String> login = List.of("username = \"lamp\"", "password_file = \"" + file + "\"");
        try (Bench bench = new Bench(folder, Mosquitto.startWith(ACCOUNT), login, "-Dlampwright.log.level=TRACE")) {
            bench.birch().tellJob(Birch.FAULT, 0);
            bench.awaitPicture(Birch.still(Birch.FAULT));
            Files.writeString(file, "not-" + PASSWORD + "\n");
            bench.broker().restart();
            Await.until(
                    "the complaint of the password",
                    () -> !bench.daemon()
                            .linesWith(0, "check username, password_file")
                            .isEmpty());
            assertEndsWell(bench);
            assertSaidGoodbye(bench.controller().recording());
            assertEquals(List.of(), bench.daemon().linesWith(0, PASSWORD));
        }
    }

    /** Neither a stalled broker nor a stalled controller delays the end. */
    @Test
    void endsInTimeWithoutAnybodysHelp() {
        try (Bench bench = new Bench(folder, Mosquitto.start(), List.of())) {
            bench.broker().freeze();
            bench.controller().freeze();
            assertEndsWell(bench);
            bench.controller().thaw();
            bench.broker().thaw();
        }
    }

    @Test
    void lightFadesOutInSmallStepsAndTheBrokerIsTold() {
        try (Bench bench = new Bench(folder, Mosquitto.start(), List.of())) {
            bench.birch().tellJob(Birch.FAULT, 0);
            bench.awaitPicture(Birch.still(Birch.FAULT));
            bench.controller().recording().clear();
            assertEndsWell(bench);
            Recording shown = bench.controller().recording();
            Await.until("darkness at the end", () -> shown.lastIs(last -> last.light() == Light.DARK));
            List<Integer> reds = shown.entries().stream()
                    .map(entry ->
                            entry.strip().stream().mapToInt(Integer::intValue).max())
                    .map(OptionalInt::getAsInt)
                    .toList();
            assertEquals(reds.stream().sorted(Comparator.reverseOrder()).toList(), reds, "only ever darker");
            assertTrue(reds.stream().distinct().count() > 4, () -> "a fade and no step: " + reds);
            String status = bench.broker().read("lampwright/status");
            assertTrue(status.contains("\"online\":false") && status.contains("\"why\":\"stopped\""), status);
        }
    }

    private static void assertEndsWell(Bench bench) {
        RunningDaemon.End end = bench.daemon().terminate();
        assertEquals(0, end.status());
        assertTrue(end.nanos() < END_NANOS, () -> "ended after " + end.nanos() / 1_000_000 + " ms");
    }

    /** Darkness long before the holdover of 3 s is over can only come from a {@code REST}. */
    private static void assertSaidGoodbye(Recording recording) {
        Await.until("darkness at the end", () -> recording.lastIs(shown -> shown.light() == Light.DARK));
        List<Entry> shown = recording.entries();
        long pause = shown.get(shown.size() - 1).nanos()
                - shown.get(shown.size() - 2).nanos();
        assertTrue(pause < HOLDOVER_NANOS / 2, () -> "no goodbye, but darkness after " + pause / 1_000_000 + " ms");
    }

    @Test
    void tellsEachMistakeOfAConfigurationInALine() throws IOException, InterruptedException {
        Path file = folder.resolve("wrong.toml");
        Files.writeString(file, """
                frames_per_s = 0
                [broker]
                url = "http://127.0.0.1"
                [printer.state]
                topic = "shop/birch/#/job"
                printing = ["RUN"]
                [controller]
                baud = 500000
                [strip]
                pixels = 30
                colour = "red"
                """);
        Child run = run("run", "--config", file.toString());
        assertEquals(1, run.status(), run.output());
        List<String> lines = run.output().lines().toList();
        List<String> wrong =
                List.of("frames_per_s", "broker.url", "printer.state.topic", "controller.port", "strip.colour");
        assertEquals(wrong.size(), lines.size(), run.output());
        for (String key : wrong) {
            assertEquals(
                    1,
                    lines.stream()
                            .filter(line -> line.startsWith(file + ":") && line.contains(key))
                            .count(),
                    key + " in " + run.output());
        }
    }

    @Test
    void tellsAWrongCallInALine() throws IOException, InterruptedException {
        for (List<String> call : List.of(List.of("run"), List.of("run", "--konfig", "x"), List.of("shine"))) {
            Child run = run(call.toArray(String[]::new));
            assertEquals(2, run.status(), run.output());
            assertEquals(1, run.output().lines().count(), run.output());
        }
    }

    @Test
    void tellsAMissingConfigurationInALine() throws IOException, InterruptedException {
        Child run = run("run", "--config", folder.resolve("none.toml").toString());
        assertEquals(1, run.status(), run.output());
        assertEquals(1, run.output().lines().count(), run.output());
    }

    private static Child run(String... arguments) throws IOException, InterruptedException {
        return Child.run(RunningDaemon.command(List.of(), arguments));
    }
}
