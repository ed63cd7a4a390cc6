package dev.lampwright.demo;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.link.LineException;
import dev.lampwright.testing.Vectors;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The pace of the in-memory line, on the test's own clock: at 10 000 baud a byte of ten bits takes a millisecond. */
class MemoryLineTest {
    private static final long BYTE_NANOS = 1_000_000;
    private static final byte[] HELLO = HexFormat.of().parseHex(Vectors.wire("hello"));
    private static final int HERE_BYTES = Vectors.wire("here").length() / 2;

    private final AtomicLong now = new AtomicLong(1);
    private final MemoryLine line = new MemoryLine(
            new MemoryController(MemoryController.BOARD, (light, sequence, frame, nanos) -> {}), 10_000, now::get);
    private final byte[] heard = new byte[100];

    @BeforeEach
    void openAndHearTheFirstWord() throws LineException {
        line.open();
        now.addAndGet(HERE_BYTES * BYTE_NANOS);
        assertEquals(HERE_BYTES, line.read(heard, 0));
        assertEquals(Vectors.wire("here_unasked"), HexFormat.of().formatHex(Arrays.copyOf(heard, HERE_BYTES)));
    }

    @Test
    void bytesArriveOneAfterTheOther() throws LineException {
        line.write(HELLO, HELLO.length);
        now.addAndGet(HELLO.length * BYTE_NANOS);
        assertEquals(0, line.read(heard, 0), "the answer has just started");
        now.addAndGet(BYTE_NANOS - 1);
        assertEquals(0, line.read(heard, 0));
        now.addAndGet(1);
        assertEquals(1, line.read(heard, 0));
        now.addAndGet(3 * BYTE_NANOS);
        assertEquals(3, line.read(heard, 0));
    }

    @Test
    void theAnswerIsTimedByTheLastByteAndNotByWhoeverLooks() throws LineException {
        line.write(HELLO, HELLO.length);
        now.addAndGet((HELLO.length + HERE_BYTES) * BYTE_NANOS);
        assertEquals(HERE_BYTES, line.read(heard, 0));
        assertEquals(Vectors.wire("here"), HexFormat.of().formatHex(Arrays.copyOf(heard, HERE_BYTES)));
    }

    @Test
    void aResetIsHeard() throws LineException {
        line.write(HELLO, HELLO.length);
        line.reset();
        now.addAndGet(HERE_BYTES * BYTE_NANOS);
        assertEquals(HERE_BYTES, line.read(heard, 0));
        assertEquals(Vectors.wire("here_unasked"), HexFormat.of().formatHex(Arrays.copyOf(heard, HERE_BYTES)));
    }

    @Test
    void closedItTakesAndGivesNothing() {
        line.close();
        assertTrue(assertThrows(LineException.class, () -> line.read(heard, 0))
                .getMessage()
                .contains("closed"));
        assertThrows(LineException.class, () -> line.write(HELLO, HELLO.length));
    }

    @Test
    void readWaitsForAnAnswerInRealTime() throws LineException {
        MemoryLine real = new MemoryLine(
                new MemoryController(MemoryController.BOARD, (light, sequence, frame, nanos) -> {}),
                500_000,
                System::nanoTime);
        real.open();
        assertAbove(0, real.read(heard, 10_000));
    }
}
