package dev.lampwright.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.LogLines;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

final class TroubleTest {
    private static final long SECOND = 1_000_000_000L;

    private final LogLines log = new LogLines();
    private final Trouble trouble = new Trouble(LoggerFactory.getLogger(TroubleTest.class));

    @AfterEach
    void stopListening() {
        log.close();
    }

    @Test
    void tellsAReasonOnceUntilItEnds() {
        for (int i = 0; i < 1000; i++) {
            trouble.begins("a", "a is wrong", i * SECOND);
        }
        trouble.begins("b", "b is wrong", 0);
        assertEquals(1, log.with("a is wrong").size());
        assertEquals(1, log.with("b is wrong").size());
        assertTrue(trouble.ends("all is well"));
        assertFalse(trouble.ends("all is well"));
        assertEquals(1, log.with("all is well").size());
    }

    @Test
    void tellsAReasonThatComesAndGoesOnceAMinute() {
        for (int i = 0; i < 120; i++) {
            trouble.begins("a", "a is wrong", i * SECOND);
            trouble.ends("all is well");
        }
        assertEquals(2, log.with("a is wrong").size());
        assertEquals(2, log.with("all is well").size());
    }

    @Test
    void tellsAReasonThatCameBackTooSoonIfItStays() {
        trouble.begins("a", "a is wrong", 0);
        trouble.ends("all is well");
        for (int i = 1; i < 1000; i++) {
            trouble.begins("a", "a is wrong", i * SECOND);
        }
        assertEquals(2, log.with("a is wrong").size());
    }

    @Test
    void saysWhatIsWrongEvenIfThatIsNotLogged() {
        assertFalse(trouble.isOn());
        trouble.begins("a is wrong", 0);
        trouble.begins("b is wrong", 0);
        assertEquals("b is wrong", trouble.words());
        trouble.ends("all is well");
        assertFalse(trouble.isOn());
        assertEquals("", trouble.words());
        trouble.begins("a is wrong", SECOND);
        assertTrue(trouble.isOn());
        assertEquals("a is wrong", trouble.words());
        assertFalse(trouble.ends("all is well again"));
        assertFalse(trouble.isOn());
        assertEquals(1, log.with("a is wrong").size());
        assertEquals(1, log.with("all is well").size());
    }

    @Test
    void tellsAtMostSixteenReasonsBeforeTheEnd() {
        for (int i = 0; i < 1000; i++) {
            trouble.begins("reason " + i, "reason " + i, 0);
        }
        assertEquals(16, log.with("reason").size());
        trouble.ends("all is well");
        trouble.begins("another", "another is wrong", 0);
        assertEquals(1, log.with("another").size());
    }
}
