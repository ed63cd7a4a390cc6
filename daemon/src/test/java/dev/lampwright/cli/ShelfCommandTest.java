package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

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
    void aBrokerThatIsNotThereIsOneLine() {
        assertWrong(1, "broker mqtt://127.0.0.1:1: ", "shelf", "--broker", "mqtt://127.0.0.1:1", "--json");
    }
}
