package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.protocol.Here;
import org.junit.jupiter.api.Test;

class InquiryTest {
    private static MemoryLine lineTo(Here here) {
        return new MemoryLine(
                new MemoryController(here, (light, sequence, frame, nanos) -> {}), LinkRig.BAUD, System::nanoTime);
    }

    @Test
    void tellsWhoIsThereAndClosesTheLine() throws LineException {
        MemoryLine line = lineTo(MemoryController.BOARD);
        assertEquals(MemoryController.BOARD, Inquiry.of(line, System::nanoTime));
        assertThrows(LineException.class, () -> line.read(new byte[1], 0));
    }

    @Test
    void tellsOfAnotherVersion() {
        MemoryLine line = lineTo(new Here(7, "9.0.0", 0, 300, 1024, 6, 1, 10_000, false));
        LineException e = assertThrows(LineException.class, () -> Inquiry.of(line, System::nanoTime));
        assertTrue(e.getMessage().startsWith("memory: the controller speaks version 7"), e.getMessage());
    }
}
