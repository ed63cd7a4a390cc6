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

    @Test
    void withoutSupplyOrFuseItStaysSafe() {
        assertEquals(450, FittingSetups.SAFE_CEILING, "500 mA of a USB 2.0 port, less 50 for the board");
        assertEquals(450, ceiling(0, 0));
        assertEquals(450, ceiling(10, 0));
        assertEquals(450, ceiling(0, 10));
        assertEquals(80, ceiling(0.1, 0));
        assertTrue(Ceilings.words(OptionalDouble.of(4), OptionalDouble.empty()).contains("Fit one"));
    }
}
