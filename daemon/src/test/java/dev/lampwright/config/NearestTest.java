package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NearestTest {
    private static final List<String> KEYS = List.of("pixels", "order", "channel_mA", "idle_mA");

    /** The usual examples of Levenshtein's distance and of optimal string alignment (common practice, no source). */
    @Test
    void distance() {
        assertEquals(3, Nearest.distance("kitten", "sitting"));
        assertEquals(3, Nearest.distance("saturday", "sunday"));
        assertEquals(2, Nearest.distance("flaw", "lawn"));
        assertEquals(4, Nearest.distance("", "four"));
        assertEquals(4, Nearest.distance("four", ""));
        assertEquals(0, Nearest.distance("same", "same"));
        assertEquals(1, Nearest.distance("wrok", "work"));
        assertEquals(3, Nearest.distance("ca", "abc"));
    }

    @Test
    void near() {
        assertEquals(Optional.of("pixels"), Nearest.to("pixles", KEYS));
        assertEquals(Optional.of("pixels"), Nearest.to("pixel", KEYS));
        assertEquals(Optional.of("pixels"), Nearest.to("PIXELS", KEYS));
        assertEquals(Optional.of("channel_mA"), Nearest.to("channel", KEYS));
        assertEquals(Optional.of("idle_mA"), Nearest.to("idle_A", KEYS));
    }

    @Test
    void far() {
        assertEquals(Optional.empty(), Nearest.to("brightness", KEYS));
        assertEquals(Optional.empty(), Nearest.to("o", KEYS));
        assertEquals(Optional.empty(), Nearest.to("pixels", List.of()));
    }
}
