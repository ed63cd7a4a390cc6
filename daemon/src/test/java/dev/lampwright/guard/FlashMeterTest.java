package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.protocol.Frame;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Light that turns on and off evenly, at sixty frames a second, flashes as often as its period says. */
class FlashMeterTest {
    private static final int RATE = 60;

    @ParameterizedTest
    @CsvSource({"60, 0", "15, 2", "10, 3", "6, 5", "3, 10", "1, 30"})
    void countsTheFlashesOfASecond(int half, int flashes) {
        Fitted fitted = Fitted.strip(10, Map.of());
        FlashMeter meter = new FlashMeter(fitted.setup(), fitted.fitting(), List.of(5.0));
        for (int tick = 0; tick < 3 * RATE; tick++) {
            Frame frame = fitted.frame();
            frame.strip()[12] = (byte) (tick / half % 2 * 255);
            frame.strip()[13] = frame.strip()[12];
            meter.see(frame, tick * 1_000_000_000L / RATE);
        }
        assertEquals(flashes, meter.mostFlashes());
    }
}
