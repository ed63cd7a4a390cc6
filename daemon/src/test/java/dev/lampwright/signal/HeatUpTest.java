package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
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

    /** A daemon that starts in the middle of a heat-up assumes that it began at room temperature. */
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

    /** Target and temperature may come in separate messages, in either order. */
    @Test
    void theTargetMayBeKnownBeforeTheTemperature() {
        assertTrue(Double.isNaN(heatUp.share(Double.NaN, 60)));
        assertEquals((41.0 - 22) / (60 - 22), heatUp.share(41, 60), EXACT);
    }

    @Test
    void aReadingThatIsMissingOnTheWayChangesNothing() {
        heatUp.share(40, 0);
        heatUp.share(40, 60);
        assertTrue(Double.isNaN(heatUp.share(Double.NaN, 60)));
        assertTrue(Double.isNaN(heatUp.share(45, Double.NaN)));
        assertEquals(0.5, heatUp.share(50, 60), EXACT);
    }

    @Test
    void goesOnFromWhereItBeganWhenTheTargetIsChangedOnTheWay() {
        heatUp.share(20, 0);
        heatUp.share(20, 60);
        assertEquals(0.5, heatUp.share(40, 60), EXACT);
        assertEquals(0.25, heatUp.share(40, 100), EXACT);
        assertEquals(0.8, heatUp.share(40, 45), EXACT);
        assertEquals(1, heatUp.share(40, 38), EXACT);
    }

    /** A target that was reached from above: sinking a little below it is not a new heat-up. */
    @Test
    void doesNotBeginAnewWhereItSinksBelowALoweredTarget() {
        heatUp.share(22, 0);
        heatUp.share(22, 215);
        heatUp.share(215, 215);
        assertEquals(1, heatUp.share(215, 170), EXACT);
        assertEquals((167.0 - 22) / (170 - 22), heatUp.share(167, 170), EXACT);
        assertEquals(0, heatUp.share(170, 215), EXACT);
    }

    @Test
    void beginsAnewAfterItWasOff() {
        heatUp.share(22, 60);
        heatUp.share(50, 60);
        assertTrue(Double.isNaN(heatUp.share(50, 0)));
        assertTrue(Double.isNaN(heatUp.share(30, 0)));
        assertEquals(0, heatUp.share(30, 60), EXACT);
    }

    @Test
    void beginsWhereItIsColdestOnTheWay() {
        heatUp.share(40, 0);
        heatUp.share(40, 60);
        assertEquals(0, heatUp.share(35, 60), EXACT);
        assertEquals(0.6, heatUp.share(50, 60), EXACT);
    }

    @Test
    void isAlwaysAShare() {
        SplittableRandom chance = new SplittableRandom(9);
        for (int i = 0; i < 100_000; i++) {
            double target = chance.nextInt(3) == 0 ? 0 : chance.nextInt(10, 100);
            double share = heatUp.share(chance.nextInt(9) == 0 ? Double.NaN : chance.nextInt(0, 120), target);
            assertTrue(Double.isNaN(share) || (share >= 0 && share <= 1), () -> "" + share);
        }
    }
}
