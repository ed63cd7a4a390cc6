package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a real broker reports about the rigs of a process that has been killed or has ended. */
@Timeout(300)
final class RigsLostIT {
    /** The start of a process takes long on a busy machine. */
    private static final Duration DEADLINE = Duration.ofSeconds(60);

    private static final List<String> RIGS = List.of("alder", "birch", "rowan");

    @TempDir
    private Path folder;

    private void write(Mosquitto broker) throws IOException {
        Files.createDirectories(folder.resolve("rigs"));
        Files.writeString(folder.resolve("shop.toml"), """
            broker.url = "%s"
            printer.state = { topic = "shop/{rig}/job", printing = ["RUN"] }
            controller.port = "%s/none-{rig}"
            strip.pixels = 8
            """.formatted(broker.url(), folder));
        for (String rig : RIGS) {
            Files.writeString(file(rig), "");
        }
    }

    private Path file(String rig) {
        return folder.resolve("rigs").resolve(rig + ".toml");
    }

    private static void await(Mosquitto broker, String rig, String words) {
        Await.until(
                rig + " is " + words,
                DEADLINE,
                () -> broker.read("lampwright/" + rig + "/status").contains(words));
    }

    @Test
    void eachIsReportedLostWhenTheProcessIsKilledAndStoppedWhenItEnds() throws IOException {
        try (Mosquitto broker = Mosquitto.start()) {
            write(broker);
            try (RunningDaemon daemon = RunningDaemon.start(folder)) {
                RIGS.forEach(rig -> await(broker, rig, "\"online\":true"));
                daemon.signal("KILL");
                RIGS.forEach(rig -> await(broker, rig, "\"lost\""));
            }
            try (RunningDaemon daemon = RunningDaemon.start(folder)) {
                RIGS.forEach(rig -> await(broker, rig, "\"online\":true"));
                Files.delete(file("birch"));
                await(broker, "birch", "\"stopped\"");
                await(broker, "alder", "\"online\":true");
                assertTrue(daemon.isAlive());
                daemon.signal("TERM");
                List.of("alder", "rowan").forEach(rig -> await(broker, rig, "\"stopped\""));
            }
        }
    }
}
