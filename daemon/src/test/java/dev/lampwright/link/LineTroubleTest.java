package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class LineTroubleTest {
    @Test
    void isLoggedOnceAndItsEndOnce() {
        try (LogCapture log = new LogCapture(LineTrouble.class)) {
            LineTrouble trouble = new LineTrouble(log.logger());
            trouble.over("nothing was wrong");
            trouble.begin("port gone");
            trouble.begin("port gone");
            assertEquals("port gone", trouble.words());
            trouble.begin("nobody answers");
            trouble.over("lit");
            trouble.over("lit");
            assertEquals("", trouble.words());
            assertEquals(List.of("WARN port gone", "WARN nobody answers", "INFO lit"), log.lines());
        }
    }
}
