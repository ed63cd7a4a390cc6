package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Child;
import dev.lampwright.testing.Mosquitto;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code run --record} as a process, without a controller, and what {@code render} draws from it. */
class RecordIT {
    private static final String FILE = """
            broker.url = "%s"
            printer.state = { topic = "shop/birch/job", printing = ["RUN"], done = ["END"] }
            controller.port = "/dev/lampwright-is-not-here"
            strip.pixels = 30
            """;

    @TempDir
    private Path folder;

    @Test
    void whatIsRecordedUntilASignalIsPlayedBack() throws IOException, InterruptedException {
        Path recording = folder.resolve("monday.jsonl");
        Path picture = folder.resolve("monday.png");
        try (Mosquitto broker = Mosquitto.start()) {
            Path config = Files.writeString(folder.resolve("birch.toml"), FILE.formatted(broker.url()));
            Process run = start(config, recording);
            try {
                broker.publish("shop/birch/job", "RUN", true);
                Await.until("a line that says printing", () -> text(recording).contains("\"state\":\"printing\""));
                broker.publish("shop/birch/job", "END", true);
                Await.until("a line that says done", () -> text(recording).contains("\"state\":\"done\""));
                run.destroy();
                assertTrue(run.waitFor(20, TimeUnit.SECONDS), "it ends");
                assertEquals(0, run.exitValue());
            } finally {
                run.destroyForcibly();
            }
            Run render =
                    Run.of("render", config.toString(), "--status", recording.toString(), "--out", picture.toString());
            assertEquals(0, render.status(), render.err());
        }
        assertTrue(text(recording).endsWith("\n"), "the last line is whole");
        assertTrue(Files.size(picture) > 500, "a picture is there");
    }

    @Test
    void aRecordingThatCannotBeWrittenIsSaidAtOnce() throws IOException, InterruptedException {
        Path config = Files.writeString(folder.resolve("birch.toml"), FILE.formatted("mqtt://127.0.0.1"));
        Path recording = folder.resolve("nowhere").resolve("monday.jsonl");
        assertEquals(
                new Child(
                        1,
                        recording + ": its folder does not exist; give the path of a file to write"
                                + System.lineSeparator()),
                recorded(config, recording));
    }

    @Test
    void aFileThatIsThereIsNotReplaced() throws IOException, InterruptedException {
        Path config = Files.writeString(folder.resolve("birch.toml"), FILE.formatted("mqtt://127.0.0.1"));
        String before = Files.readString(config);
        assertEquals(
                new Child(
                        1, config + ": already exists; choose another path, or move it away" + System.lineSeparator()),
                recorded(config, config));
        assertEquals(before, Files.readString(config));
    }

    private static Child recorded(Path config, Path recording) throws IOException, InterruptedException {
        return Child.run(
                List.of(),
                List.of(),
                Lampwright.class,
                "run",
                "--config",
                config.toString(),
                "--record",
                recording.toString());
    }

    private Process start(Path config, Path recording) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Lampwright.class.getName(),
                        "run",
                        "--config",
                        config.toString(),
                        "--record",
                        recording.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("log").toFile())
                .start();
    }

    private static String text(Path file) {
        try {
            return Files.exists(file) ? Files.readString(file) : "";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
