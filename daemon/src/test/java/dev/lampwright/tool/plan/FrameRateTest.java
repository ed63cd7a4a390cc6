package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrameRateTest {
    /**
     * What {@code firmware-notes/README.md} calculates to be possible, two dimmers, RGB; the emulated board reaches 87 to 99 % of
     * it. What it calls 115200 baud is 117647 on its chip.
     */
    @ParameterizedTest
    @CsvSource({
        "117647, 30, 92.9",
        "117647, 300, 11.4",
        "250000, 30, 181",
        "250000, 144, 44.1",
        "500000, 30, 311",
        "500000, 144, 74.1",
        "500000, 300, 36.3",
        "1000000, 144, 112",
        "1000000, 300, 54.7"
    })
    void asTheFirmwareIsMeasuredBy(int baud, int pixels, double most) {
        PlannedLights rig = Rigs.of("strip.pixels = " + pixels + """

                dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
                dimmers.glow = { channel = 1, volts = 24, full_mA = 800 }
                """);
        assertEquals(most, FrameRate.of(rig.setup(), baud, false).most(), 0.006 * most);
    }
}
