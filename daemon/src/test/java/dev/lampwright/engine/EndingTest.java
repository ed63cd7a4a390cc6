package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class EndingTest {
    private static final long FRAME_NANOS = 10_000_000;

    private final Config config = Configs.of(8, "RGB", """
            dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
            looks.plain = { dimmers = { work = 1 }, layers = [{ colour = "white" }] }
            [[cues]]
            look = "plain"
            """);
    private final Chain chain = Chain.of(config);
    private final Frame frame = new Frame(config.setup().stripBytes(), 1);

    private int brightness(long nanos) {
        chain.make(PrinterStatus.nothingHeard(), nanos, frame);
        return frame.strip()[0] & 0xFF;
    }

    @Test
    void lightFallsWithoutAStepAndStaysOut() {
        long from = 200 * FRAME_NANOS;
        IntStream.range(0, 200).forEach(i -> brightness(i * FRAME_NANOS));
        assertEquals(255, brightness(from));
        assertEquals(65_535, frame.duties()[0]);
        Ending ending = new Ending(from, 30 * FRAME_NANOS);
        chain.end(ending);
        int before = 255;
        for (int i = 0; i < 30; i++) {
            int now = brightness(from + i * FRAME_NANOS);
            assertTrue(now <= before && before - now <= 255 / 15 + 1, before + " then " + now);
            before = now;
        }
        assertTrue(ending.isOver(from + 30 * FRAME_NANOS));
        for (int i = 30; i < 100; i++) {
            brightness(from + i * FRAME_NANOS);
            assertArrayEquals(new byte[24], frame.strip());
            assertEquals(0, frame.duties()[0]);
        }
    }
}
