package dev.lampwright.look;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Against what is known of the heat equation (Crank, "The Mathematics of Diffusion"; from memory). */
class HeatBarTest {
    private static final int CELLS = 40;
    private static final double NEVER = Double.POSITIVE_INFINITY;

    private static double sum(HeatBar bar, int cells) {
        double sum = 0;
        for (int i = 0; i < cells; i++) {
            sum += bar.heat(i);
        }
        return sum;
    }

    /** With insulated ends and no cooling, heat is neither made nor lost. */
    @Test
    void heatIsKeptWhereNothingCools() {
        SplittableRandom chance = new SplittableRandom(3);
        HeatBar bar = new HeatBar(CELLS, 7, NEVER);
        double fallen = 0;
        for (int step = 0; step < 5000; step++) {
            double kelvin = 1000 * chance.nextDouble();
            bar.strike(chance.nextInt(CELLS), kelvin);
            fallen += kelvin;
            bar.step();
        }
        assertEquals(fallen, sum(bar, CELLS), 1e-9 * fallen);
    }

    /** Cooling heat falls to 1/e in the cooling time, however it spreads. */
    @Test
    void heatFallsToOneEth() {
        HeatBar bar = new HeatBar(CELLS, 7, 2.5);
        bar.strike(11, 900);
        for (int step = 0; step < 150; step++) {
            bar.step();
        }
        assertEquals(900 / Math.E, sum(bar, CELLS), 1e-9 * 900);
    }

    /** No place gets hotter than the hottest was, or colder than the coldest, even if heat spreads as fast as it may. */
    @Test
    void heatOnlyLevelsOut() {
        HeatBar bar = new HeatBar(CELLS, 30, NEVER);
        bar.strike(0, 1000);
        bar.strike(20, 500);
        double hottest = 1000;
        for (int step = 0; step < 2000; step++) {
            bar.step();
            double now = 0;
            for (int i = 0; i < CELLS; i++) {
                assertAtLeast(0, bar.heat(i));
                now = Math.max(now, bar.heat(i));
            }
            assertTrue(now <= hottest + 1e-9, now + " after " + hottest);
            hottest = now;
        }
    }

    /**
     * Cosines are the modes of a bar with insulated ends. In each step of the scheme they shrink by 1 − 4r sin²(kπ/2N), r = DΔt; von
     * Neumann's analysis.
     */
    @Test
    void modesShrinkAsTheSchemeHasIt() {
        double diffusion = 12;
        for (int k = 1; k < CELLS; k++) {
            HeatBar bar = mode(k, CELLS, diffusion, NEVER);
            double sine = Math.sin(k * Math.PI / (2 * CELLS));
            double factor = 1 - 4 * diffusion * HeatBar.STEP_S * sine * sine;
            double expected = 1000;
            for (int step = 0; step < 20; step++) {
                bar.step();
                expected *= factor;
            }
            for (int i = 0; i < CELLS; i++) {
                assertEquals(expected * cosine(k, i, CELLS), bar.heat(i), 1e-8, "mode " + k);
            }
        }
    }

    /** The same modes decay at the rate D(kπ/L)² + 1/τ in the bar itself. */
    @Test
    void longModesDecayAsABarHasIt() {
        int cells = 200;
        double diffusion = 9;
        double cooling = 4;
        for (int k = 1; k <= 6; k++) {
            HeatBar bar = mode(k, cells, diffusion, cooling);
            int steps = 240;
            for (int step = 0; step < steps; step++) {
                bar.step();
            }
            double seconds = steps * HeatBar.STEP_S;
            double rate = -Math.log(bar.heat(0) / (1000 * cosine(k, 0, cells))) / seconds;
            double wave = k * Math.PI / cells;
            assertEquals(diffusion * wave * wave + 1 / cooling, rate, 1e-4 * rate, "mode " + k);
        }
    }

    private static HeatBar mode(int k, int cells, double diffusion, double cooling) {
        HeatBar bar = new HeatBar(cells, diffusion, cooling);
        for (int i = 0; i < cells; i++) {
            bar.strike(i, 1000 * cosine(k, i, cells));
        }
        return bar;
    }

    private static double cosine(int k, int cell, int cells) {
        return Math.cos(k * Math.PI * (cell + 0.5) / cells);
    }

    @Test
    void barsOfOneAndTwoCells() {
        HeatBar one = new HeatBar(1, 30, NEVER);
        one.strike(0, 100);
        one.step();
        assertEquals(100, one.heat(0), 1e-12);
        HeatBar two = new HeatBar(2, 30, NEVER);
        two.strike(0, 100);
        two.step();
        assertEquals(50, two.heat(0), 1e-9);
        assertEquals(50, two.heat(1), 1e-9);
    }
}
