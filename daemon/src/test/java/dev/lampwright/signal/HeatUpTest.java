package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class HeatUpTest {
    private static final double EXACT = 1e-12;

    private final HeatUp heatUp = new HeatUp(22);

    @Test
    void isUnknownWhileNothingHeats() {
        assertTrue(Double.isNaN(heatUp.share(22, 0)));
        assertTrue(Double.isNaN(heatUp.share(22, Double.NaN)));
        assertTrue(Double.isNaN(heatUp.share(Double.NaN, 60)));
    }

    @Test
    void countsFromWhereTheHeatUpBegan() {
        assertTrue(Double.isNaN(heatUp.share(40, 0)));
        assertEquals(0, heatUp.share(40, 60), EXACT);
        assertEquals(0.5, heatUp.share(50, 60), EXACT);
        assertEquals(1, heatUp.share(60, 60), EXACT);
        assertEquals(1, heatUp.share(61, 60), EXACT);
    }

    /** A daemon that starts in the middle of a heat-up takes it that the room was where it began. */
    @Test
    void takesTheRoomWhereItHasNotSeenTheBeginning() {
        assertEquals((41.0 - 22) / (60 - 22), heatUp.share(41, 60), EXACT);
    }

    @Test
    void beginsAnewWithANewTarget() {
        heatUp.share(22, 0);
        heatUp.share(22, 60);
        assertEquals(1, heatUp.share(60, 60), EXACT);
        assertEquals(0, heatUp.share(60, 100), EXACT);
        assertEquals(0.25, heatUp.share(70, 100), EXACT);
    }

    @Test
    void aTargetBelowIsReached() {
        heatUp.share(215, 0);
        assertEquals(1, heatUp.share(215, 200), EXACT);
    }

    /** A sensor that wobbles below the start does not give a share below 0. */
    @Test
    void staysWithinBounds() {
        heatUp.share(30, 0);
        heatUp.share(30, 60);
        assertEquals(0, heatUp.share(29, 60), EXACT);
    }
}
