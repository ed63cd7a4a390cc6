package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class CoolingTest {
    private static final double EXACT = 1e-12;

    private final Cooling cooling = new Cooling(22, 43);

    @Test
    void goesFromHottestToTouchable() {
        assertEquals(1, cooling.share(63, 0), EXACT);
        assertEquals(0.5, cooling.share(53, 0), EXACT);
        assertEquals(0, cooling.share(43, 0), EXACT);
        assertEquals(0, cooling.share(22, 0), EXACT);
    }

    @Test
    void isUnknownWhileItIsHeatedOrAReadingIsMissing() {
        assertTrue(Double.isNaN(cooling.share(60, 60)));
        assertTrue(Double.isNaN(cooling.share(Double.NaN, 0)));
        assertTrue(Double.isNaN(cooling.share(60, Double.NaN)));
    }

    /** Heat still in transit makes it hotter for a moment. */
    @Test
    void countsFromTheHottest() {
        assertEquals(1, cooling.share(60, 0), EXACT);
        assertEquals(1, cooling.share(63, 0), EXACT);
        assertEquals(0.5, cooling.share(53, 0), EXACT);
    }

    @Test
    void beginsAnewAfterEachHeatUp() {
        cooling.share(103, 0);
        cooling.share(60, 60);
        assertEquals(1, cooling.share(63, 0), EXACT);
        cooling.share(40, 0);
        assertEquals(1, cooling.share(45, 0), EXACT);
    }

    @Test
    void aReadingThatIsMissingChangesNothing() {
        cooling.share(63, 0);
        cooling.share(Double.NaN, 0);
        cooling.share(60, Double.NaN);
        assertEquals(0.5, cooling.share(53, 0), EXACT);
    }
}
