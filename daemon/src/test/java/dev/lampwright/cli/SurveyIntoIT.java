package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Child;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as a process, which adds what it hears on a real Mosquitto to an existing file. */
class SurveyIntoIT {
    @TempDir
    private Path folder;

    private static Child survey(Path file, String... more) throws IOException, InterruptedException {
        List<String> arguments = new ArrayList<>(List.of("survey", "--into", file.toString(), "--seconds", "2"));
        arguments.addAll(List.of(more));
        return Child.run(RunningDaemon.command(List.of(), arguments.toArray(String[]::new)));
    }

    @Test
    void addsWhatItHearsAndLeavesTheRest() throws IOException, InterruptedException {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            mosquitto.publish(
                    "shop/alder/heat",
                    "{\"plate\": {\"now\": 59.8, \"set\": 60}, \"tip\": {\"now\": 214.6, \"set\": 215}}",
                    true);
            String text = """
                    # mine
                    [broker]
                    url = "%s"   # the shelf
                    [printer.state]
                    topic = "shop/alder/job"
                    fault = ["ALARM*"]
                    [controller]
                    port = "/dev/ttyACM0"
                    [strip]
                    pixels = 23
                    """.formatted(mosquitto.url());
            Path file = Files.writeString(folder.resolve("alder.toml"), text);
            Child shown = survey(file);
            assertEquals(1, shown.status(), shown.output());
            assertTrue(shown.output().contains("nothing written; add --yes to write it"), shown.output());
            assertTrue(shown.output().contains("+bed.actual_C = { topic = \"shop/alder/heat\""), shown.output());
            assertEquals(text, Files.readString(file));
            Child written = survey(file, "--yes");
            assertEquals(0, written.status(), written.output());
            String[] parts = text.split("(?=\\[controller\\])", -1);
            String after = Files.readString(file);
            assertTrue(after.startsWith(parts[0] + "\n[printer.readings]\n# "), after);
            assertTrue(after.endsWith("\n" + parts[1]), after);
            assertEquals(text, Files.readString(folder.resolve("alder.toml.old-1")));
            Child again = survey(file, "--yes");
            assertTrue(again.output().contains("already has all of that; nothing to write"), again.output());
        }
    }
}
