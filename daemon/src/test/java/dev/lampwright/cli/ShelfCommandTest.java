package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShelfCommandTest {
    private static void assertWrong(int status, String beginning, String... args) {
        Run run = Run.of(args);
        assertEquals(status, run.status(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().startsWith(beginning), run.err());
        assertEquals("", run.out());
    }

    @Test
    void calledWrongly() {
        assertWrong(2, "lampwright shelf: needs one of --broker and --config; ", "shelf");
        assertWrong(
                2,
                "lampwright shelf: --levels is 9; write a whole number from 1 to 8",
                "shelf",
                "--broker",
                "mqtt://127.0.0.1",
                "--levels",
                "9");
    }

    @Test
    void aPasswordThatOnlyTheServiceHasIsNotAskedFor(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("alder.toml"), """
                [broker]
                url = "mqtt://127.0.0.1:1"
                username = "lamp"
                password_file = "credential:nobody-has-this"
                """);
        String beginning = file
                + " has its password in a credential, which only the service can read; log in with a name of your own: ";
        assertWrong(2, "lampwright shelf: " + beginning, "shelf", "--config", file.toString());
        assertWrong(2, "lampwright tell: " + beginning, "tell", "--config", file.toString(), "status");
    }

    @Test
    void aBrokerThatIsNotThereIsOneLine() {
        assertWrong(1, "broker mqtt://127.0.0.1:1: ", "shelf", "--broker", "mqtt://127.0.0.1:1", "--json");
    }
}
