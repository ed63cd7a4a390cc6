package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.cli.BenchRig.Answer;
import dev.lampwright.testing.Await;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A look that is in no file, on the strip. */
@Timeout(120)
class BenchTrialTest {
    @TempDir
    private Path folder;

    private static Map<String, Object> trial(String colour, String lease) {
        Map<String, Object> look = Map.of("layers", List.of(Map.of("colour", colour)));
        return Map.of("name", "mine", "look", look, "for_s", 60, "lease", lease);
    }

    private static void awaitLook(BenchRig rig, String name) {
        Await.until(name, () -> rig.daemon().report().light().look().equals(name));
    }

    @Test
    void itIsOnUntilItIsTakenOff() throws Exception {
        try (BenchRig rig = new BenchRig(folder)) {
            String text = rig.text();
            awaitLook(rig, "silent");
            Answer begun = rig.post("try", trial("red", "abc"));
            assertEquals(200, begun.status(), begun.json().toString());
            assertEquals(10, begun.json().get("lease_s").asInt());
            awaitLook(rig, "mine (on trial)");
            Await.until(
                    "it is lit",
                    () -> rig.shown()[0] == rig.shown()[3] && rig.shown()[0] + rig.shown()[1] + rig.shown()[2] != 0);
            assertEquals("trying", rig.post("try", trial("blue", "other")).code());
            assertEquals(200, rig.post("try", trial("blue", "abc")).status(), "another look, the same lease");
            int left = rig.post("try/keep", Map.of("lease", "abc"))
                    .json()
                    .get("left_s")
                    .asInt();
            assertEquals(59, left, 1);
            assertEquals(200, rig.post("try/end", Map.of("lease", "abc")).status());
            awaitLook(rig, "silent");
            Answer over = rig.post("try/keep", Map.of("lease", "abc"));
            assertEquals(410, over.status());
            assertEquals("it was ended", over.json().get("why").asText());
            assertEquals(text, rig.text(), "nothing is saved");
        }
    }

    @Test
    void whatIsNotRightIsNotPutOn() {
        try (BenchRig rig = new BenchRig(folder)) {
            Map<String, Object> strobe =
                    Map.of("layers", List.of(Map.of("colour", "white", "rhythm", "on 0.1s off 0.1s", "edge_s", 0)));
            Answer refused = rig.post("try", Map.of("name", "mine", "look", strobe, "lease", "abc"));
            assertEquals(422, refused.status());
            assertEquals("rhythm", refused.json().at("/mistakes/0/key").asText());
            assertEquals(422, rig.post("try", trial("rde", "abc")).status());
            assertEquals(400, rig.post("try", trial("red", "A B")).status());
            assertEquals("silent", rig.daemon().report().light().look());
        }
    }
}
