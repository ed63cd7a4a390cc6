package dev.lampwright.log;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class StreamCharsetTest {
    @Test
    void asciiGivesWayToWhatHasAllLetters() {
        assertEquals(StandardCharsets.UTF_8, StreamCharset.insteadOf(StandardCharsets.US_ASCII));
    }

    @Test
    void whatALocaleChoseStays() {
        assertEquals(StandardCharsets.UTF_8, StreamCharset.insteadOf(StandardCharsets.UTF_8));
        assertEquals(StandardCharsets.ISO_8859_1, StreamCharset.insteadOf(StandardCharsets.ISO_8859_1));
    }
}
