package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class FramePartsTest {
    /** Type, sequence and checksum take four bytes, offset and flags three, the duties two each; one is left for the strip. */
    @Test
    void aPacketMustHoldTheDimmersAndOneByte() {
        assertDoesNotThrow(() -> new FrameParts(12, 2, 4 + 3 + 4 + 1));
        assertThrows(IllegalArgumentException.class, () -> new FrameParts(12, 2, 4 + 3 + 4));
        assertDoesNotThrow(() -> new FrameParts(12, 0, 4 + 3 + 1));
        assertThrows(IllegalArgumentException.class, () -> new FrameParts(12, 0, 4 + 3));
    }

    @Test
    void theShortestPacketsCarryAFrame() {
        Frame frame = new Frame(3, 1);
        Arrays.setAll(frame.duties(), i -> 0x1234);
        System.arraycopy(new byte[] {7, 8, 9}, 0, frame.strip(), 0, 3);
        FrameParts parts = new FrameParts(3, 1, 4 + 3 + 2 + 1);
        parts.begin(frame);
        assertEquals("000000123407", body(parts));
        assertFalse(parts.done());
        assertEquals("0001010809", body(parts));
        assertTrue(parts.done());
    }

    @Test
    void whatIsLeftMayBeGivenUp() {
        FrameParts parts = new FrameParts(30, 0, 20);
        assertTrue(parts.done());
        parts.begin(new Frame(30, 0));
        assertFalse(parts.done());
        parts.abandon();
        assertTrue(parts.done());
    }

    @Test
    void aFrameIsDarkenedWhole() {
        Frame frame = new Frame(4, 2);
        Arrays.fill(frame.strip(), (byte) 200);
        Arrays.fill(frame.duties(), 60_000);
        frame.darken();
        assertArrayEquals(new byte[4], frame.strip());
        assertArrayEquals(new int[2], frame.duties());
    }

    private static String body(FrameParts parts) {
        int length = parts.next(1);
        return Recorder.of(Arrays.copyOf(parts.wire(), length)).messages.get(0).body();
    }
}
