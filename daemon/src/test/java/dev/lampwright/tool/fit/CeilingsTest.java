package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class CeilingsTest {
    private static int ceiling(double amps, double fuse) {
        return Ceilings.of(
                amps > 0 ? OptionalDouble.of(amps) : OptionalDouble.empty(),
                fuse > 0 ? OptionalDouble.of(fuse) : OptionalDouble.empty());
    }

    /** 80 % of a supply and 75 % of a fuse: common practice, no source. */
    @Test
    void theWeakerOfSupplyAndFuseSetsIt() {
        assertEquals(3000, ceiling(10, 4));
        assertEquals(3200, ceiling(4, 10));
        assertEquals(65_535, ceiling(200, 200));
    }

    /**
     * A fuse of 3.15 A carries 2.3625 A continuously. Sixty pixels draw 60 mA dark and 3600 mA in pulses: a mean square of 0.06² + (2 ×
     * 0.06 × 3.6 + 3.6²)·d is 2.3625² at d = 0.4165, so 1559 mA as a mean. A lamp of 4 A, without anything dark: 2.3625² ÷ 4 is 1395 mA.
     */
    @Test
    void pulsesWarmAFuseMoreThanTheirMean() {
        OptionalDouble fuse = OptionalDouble.of(3.15);
        assertEquals(1559, Ceilings.heated(2362, fuse, 60, 3660));
        assertEquals(1395, Ceilings.heated(2362, fuse, 0, 4000));
        assertEquals(2362, Ceilings.heated(2362, fuse, 0, 2000), "what never pulses above it");
        assertEquals(450, Ceilings.heated(450, OptionalDouble.empty(), 60, 3660), "no fuse is known");
        assertEquals(1000, Ceilings.heated(1000, fuse, 60, 3660), "never up");
        assertEquals(500, Ceilings.heated(500, OptionalDouble.of(0.1), 200, 3660), "dark pixels alone are too much");
    }

    @Test
    void withoutSupplyOrFuseItStaysSafe() {
        assertEquals(450, FittingSetups.SAFE_CEILING, "500 mA of a USB 2.0 port, less 50 for the board");
        assertEquals(450, ceiling(0, 0));
        assertEquals(450, ceiling(10, 0));
        assertEquals(450, ceiling(0, 10));
        assertEquals(80, ceiling(0.1, 0));
        assertTrue(Ceilings.words(OptionalDouble.of(4), OptionalDouble.empty())
                .english()
                .contains("Fit one"));
    }
}
