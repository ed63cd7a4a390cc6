package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ZoneTest {
    private static List<Integer> pixels(Zone zone) {
        return IntStream.range(0, zone.pixelCount()).mapToObj(zone::pixel).toList();
    }

    private static List<Integer> places(Zone zone) {
        return IntStream.range(0, zone.pixelCount()).mapToObj(zone::place).toList();
    }

    @Test
    void aRunGoesEitherWay() {
        assertEquals(List.of(3, 4, 5), pixels(Zone.run(3, 5)));
        assertEquals(List.of(5, 4, 3), pixels(Zone.run(5, 3)));
        assertEquals(List.of(0, 1, 2), places(Zone.run(5, 3)));
        assertEquals(List.of(7), pixels(Zone.run(7, 7)));
    }

    @Test
    void zonesOfTheSamePixelsAndPlacesAreTheSame() {
        Zone zone = Zone.run(0, 5).mirrored();
        assertEquals(zone, Zone.run(0, 5).mirrored());
        assertEquals(zone.hashCode(), Zone.run(0, 5).mirrored().hashCode());
        assertNotEquals(zone, Zone.run(0, 5));
        assertNotEquals(zone, Zone.run(5, 0).mirrored());
        assertNotEquals(Zone.run(0, 5), Zone.run(0, 4));
    }

    @Test
    void joinedRunsAreOne() {
        Zone zone = Zone.run(0, 1).then(Zone.run(9, 8)).then(Zone.run(4, 4));
        assertEquals(List.of(0, 1, 9, 8, 4), pixels(zone));
        assertEquals(List.of(0, 1, 2, 3, 4), places(zone));
        assertEquals(5, zone.length());
    }

    @Test
    void aMirroredZoneBeginsAtBothEnds() {
        assertEquals(List.of(0, 1, 2, 2, 1, 0), places(Zone.run(0, 5).mirrored()));
        assertEquals(3, Zone.run(0, 5).mirrored().length());
        assertEquals(List.of(0, 1, 2, 1, 0), places(Zone.run(4, 0).mirrored()));
        assertEquals(List.of(4, 3, 2, 1, 0), pixels(Zone.run(4, 0).mirrored()));
        assertEquals(1, Zone.run(2, 2).mirrored().length());
    }

    @Test
    void whatIsMirroredCanBeJoinedAndMirroredAgain() {
        Zone zone = Zone.run(0, 3).mirrored().then(Zone.run(6, 7));
        assertEquals(List.of(0, 1, 1, 0, 2, 3), places(zone));
        assertEquals(List.of(0, 1, 1, 0, 1, 0), places(zone.mirrored()));
        assertEquals(2, zone.mirrored().length());
    }

    @Test
    void nothingIsAZoneToo() {
        assertEquals(0, Zone.empty().length());
        assertEquals(0, Zone.empty().mirrored().pixelCount());
        assertEquals(List.of(2, 3), pixels(Zone.empty().then(Zone.run(2, 3))));
    }

    @Test
    void noPixelTwice() {
        IllegalArgumentException wrong = assertThrows(
                IllegalArgumentException.class, () -> Zone.run(0, 9).then(Zone.run(12, 9)));
        assertEquals("has pixel 9 twice; name each pixel once", wrong.getMessage());
    }

    @Test
    void isToldAsItIsWritten() {
        assertEquals("3-5", Zone.run(3, 5).toString());
        assertEquals("5", Zone.run(5, 5).toString());
        assertEquals(
                "0-9 + 29-20 + 15",
                Zone.run(0, 9).then(Zone.run(29, 20)).then(Zone.run(15, 15)).toString());
        assertEquals("59-0 mirrored", Zone.run(59, 0).mirrored().toString());
        assertEquals("", Zone.empty().toString());
    }

    @Test
    void evenlySpacedPixelsAreWrittenShort() {
        assertEquals("0-8 every 2", Zone.of(new int[] {0, 2, 4, 6, 8}).toString());
        assertEquals("9-3 every 3 + 4-5", Zone.of(new int[] {9, 6, 3, 4, 5}).toString());
        assertEquals("0 + 2", Zone.of(new int[] {0, 2}).toString());
        assertEquals(
                "7-1 every 2 mirrored",
                Zone.of(new int[] {7, 5, 3, 1}).mirrored().toString());
        assertEquals(Zone.run(0, 3), Zone.of(new int[] {0, 1, 2, 3}));
        assertThrows(IllegalArgumentException.class, () -> Zone.of(new int[] {1, 2, 1}));
    }
}
