package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Source;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class EventTest {
    private static final long SECOND = 1_000_000_000L;

    private final Bindings.OfEvent camera = new Bindings.OfEvent(
            new Source("shop/alder/camera", PayloadPath.at("/what")),
            List.of("SNAP*"),
            List.of("DONE", "FAILED"),
            Duration.ofSeconds(10));
    private final StatusReader reader = new StatusReader(new Bindings(List.of(), Map.of(), Map.of("camera", camera)));
    private PrinterStatus status = PrinterStatus.nothingHeard();

    private void hear(String payload, long nanos) {
        status = reader.read(status, "shop/alder/camera", payload.getBytes(StandardCharsets.UTF_8), nanos);
    }

    @Test
    void itLastsUntilItsEndIsTold() {
        assertFalse(status.eventAt("camera", 0));
        hear("{\"what\":\"snapping\"}", 5 * SECOND);
        assertTrue(status.eventAt("camera", 5 * SECOND));
        assertTrue(status.eventAt("camera", 14 * SECOND));
        hear("{\"what\":\"failed\"}", 8 * SECOND);
        assertFalse(status.eventAt("camera", 8 * SECOND));
        assertFalse(status.eventAt("other", 8 * SECOND));
    }

    @Test
    void itLastsNoLongerThanItMay() {
        hear("{\"what\":\"SNAP\"}", 5 * SECOND);
        assertFalse(status.eventAt("camera", 15 * SECOND));
    }

    @Test
    void otherWordsChangeNothingButAreHeard() {
        hear("{\"what\":\"SNAP\"}", 5 * SECOND);
        hear("{\"what\":\"zoom\"}", 6 * SECOND);
        assertTrue(status.eventAt("camera", 14 * SECOND));
        assertEquals(6 * SECOND, status.heardAtNanos());
        PrinterStatus before = status;
        hear("{\"what\":[1]}", 7 * SECOND);
        assertEquals(before.heardAtNanos(), status.heardAtNanos());
        assertTrue(status.eventAt("camera", 14 * SECOND));
    }

    @Test
    void theTopicIsSubscribedTo() {
        Bindings bindings = new Bindings(List.of(), Map.of(), Map.of("camera", camera));
        assertEquals(List.of("shop/alder/camera"), bindings.topicFilters());
    }
}
