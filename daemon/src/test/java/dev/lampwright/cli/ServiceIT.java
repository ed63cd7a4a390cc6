package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.service.IgnoredSignal;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Limited;
import dev.lampwright.testing.NotifyReceiver;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The daemon under a service manager: what it reports over {@code NOTIFY_SOCKET}, by sd_notify(3). There is neither broker nor controller.
 */
@Timeout(60)
class ServiceIT {
    /** Nine lines: everything that is required. */
    static final String CONFIG = """
            [broker]
            url = "mqtt://127.0.0.1:1"
            [printer.state]
            topic = "shop/alder/job"
            printing = ["RUN"]
            [controller]
            port = "/dev/lampwright-none"
            [strip]
            pixels = 30
            """;

    @TempDir
    private Path folder;

    private Path config;

    @BeforeEach
    void write() throws IOException {
        config = Files.writeString(folder.resolve("alder.toml"), CONFIG);
    }

    @Test
    void tellsItsWholeLife() throws IOException {
        try (NotifyReceiver manager =
                        new NotifyReceiver(folder.resolve("notify").toString());
                RunningDaemon daemon = RunningDaemon.start(config, environment(manager))) {
            int ready = manager.await(0, "READY=1");
            assertEquals(1, ready, () -> manager.lines().toString());
            manager.await(ready, "STATUS=silent, look silent; strip ");
            manager.await(ready, "WATCHDOG=1");

            // By then the serial library is loaded, which ignores SIGHUP.
            Await.until(
                    "the missing port in the status",
                    () -> manager.lines().stream().anyMatch(line -> line.contains("controller down (no port ")));
            Await.until("SIGHUP is heard again", () -> !daemon.ignores(IgnoredSignal.HUP));
            int before = manager.lines().size();
            daemon.signal("HUP");
            int reloading = manager.await(before, "RELOADING=1");
            assertTrue(manager.lines().get(reloading).startsWith("MONOTONIC_USEC="));
            manager.await(reloading, "READY=1");

            Files.writeString(config, "pixels = 1");
            int refused = manager.await(reloading + 1, "RELOADING=1");
            manager.await(refused, "READY=1");

            RunningDaemon.End end = daemon.terminate();
            assertEquals(0, end.status());
            int stopping = manager.await(refused, "STOPPING=1");
            assertEquals(
                    List.of(), manager.lines().subList(stopping, manager.lines().size()));
        }
    }

    /** A stopped process cannot give a sign of life; one that continues does so again. */
    @Test
    void givesSignsOfLifeAgainAfterItWasStopped() {
        try (NotifyReceiver manager = new NotifyReceiver(
                        "@lampwright-it-" + ProcessHandle.current().pid());
                RunningDaemon daemon = RunningDaemon.start(config, environment(manager))) {
            manager.await(0, "WATCHDOG=1");
            daemon.signal("STOP");
            Await.until("the process is stopped", () -> daemon.state().equals("T"));
            int stopped = manager.lines().size();
            daemon.signal("CONT");
            manager.await(stopped, "WATCHDOG=1");
        }
    }

    @Test
    void writesPrioritiesWhereTheJournalListens() throws IOException, InterruptedException {
        List<String> lines = logTo("journal");
        assertFalse(lines.isEmpty());
        assertTrue(lines.stream().allMatch(line -> line.matches("<[3467]>.*")), lines.toString());
        assertTrue(lines.contains("<6>started with " + config), lines.toString());
    }

    @Test
    void writesTheTimeWhereTheJournalIsInheritedAndDoesNotListen() throws IOException, InterruptedException {
        List<String> lines = logTo("elsewhere");
        assertTrue(
                lines.stream().anyMatch(line -> line.matches("\\d\\d:\\d\\d:\\d\\d INFO  started with .*")),
                lines.toString());
    }

    /** What the daemon writes to a file when JOURNAL_STREAM names the file called "journal". */
    private List<String> logTo(String name) throws IOException, InterruptedException {
        Path journal = Files.createFile(folder.resolve("journal"));
        Path log = folder.resolve(name);
        String stream = Files.getAttribute(journal, "unix:dev") + ":" + Files.getAttribute(journal, "unix:ino");
        ProcessBuilder builder =
                new ProcessBuilder(RunningDaemon.command(List.of(), "run", "--config", config.toString()));
        builder.environment().put("JOURNAL_STREAM", stream);
        Process daemon = Limited.start(
                builder.redirectError(ProcessBuilder.Redirect.appendTo(log.toFile())), Duration.ofMinutes(2));
        try {
            Await.until("it has started", () -> text(log).contains("started with"));
            daemon.destroy();
            daemon.waitFor();
        } finally {
            daemon.destroyForcibly();
        }
        return Files.readAllLines(log);
    }

    private static String text(Path file) {
        try {
            return Files.exists(file) ? Files.readString(file) : "";
        } catch (IOException e) {
            return "";
        }
    }

    private static Map<String, String> environment(NotifyReceiver manager) {
        return Map.of("NOTIFY_SOCKET", manager.name(), "WATCHDOG_USEC", "400000");
    }
}
