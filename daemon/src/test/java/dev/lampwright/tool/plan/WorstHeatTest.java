package dev.lampwright.tool.plan;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class WorstHeatTest {
    private static final double DARK = 0.001;
    private static final double FULL = 0.061;
    private static final int STEPS = 200;

    private final SplittableRandom chance = new SplittableRandom(23);

    private double[] weights(int pixels) {
        return chance.doubles(pixels, -0.3, 1).toArray();
    }

    /** The mean square of pulses of duty d is full²·d, so the RMS is full·√d = √(mean × full). */
    @Test
    void oneWireForAllIsTheRootOfMeanTimesFull() {
        double[] all = new double[150];
        Arrays.fill(all, 1);
        assertEquals(Math.sqrt(4 * 9), WorstHeat.together(all, 0, 0.06, 4), 1e-9);
        assertEquals(4, WorstHeat.together(all, 0, 0.06 / 150 * 150 * 4 / 9, 4), 1e-9, "no pulses at full duty");
    }

    /** By hand: 0.15 A dark and 9 A in pulses of duty 3.85 ÷ 9: mean square 4² + 9²·d·(1 − d) = 35.83. */
    @Test
    void theDarkCurrentDoesNotPulse() {
        double[] all = new double[150];
        Arrays.fill(all, 1);
        assertEquals(Math.sqrt(35.83), WorstHeat.together(all, DARK, FULL, 4), 1e-3);
    }

    /** Random waveforms, drawn in 200 steps: pixels light together, each for its own share of the period, within the ceiling. None heats more. */
    @Test
    void noDutiesHeatMore() {
        for (int round = 0; round < 2000; round++) {
            int pixels = 1 + chance.nextInt(12);
            double[] weights = weights(pixels);
            double ceiling = pixels * (DARK + chance.nextDouble() * FULL);
            double[] duties = duties(pixels, ceiling);
            assertAtMost(
                    WorstHeat.together(weights, DARK, FULL, ceiling) + 1e-12, rms(weights, duties, new double[pixels]));
        }
    }

    /** The same with pixels that light at independent times; over all such times the mean square is not above the bound. */
    @Test
    void apartIsABoundForPulsesOfTheirOwnTime() {
        for (int round = 0; round < 300; round++) {
            int pixels = 2 + chance.nextInt(10);
            double[] weights = weights(pixels);
            double ceiling = pixels * (DARK + chance.nextDouble() * FULL);
            double[] duties = duties(pixels, ceiling);
            double square = 0;
            int shifts = 60;
            for (int i = 0; i < shifts; i++) {
                double rms = rms(weights, duties, chance.doubles(pixels, 0, 1).toArray());
                square += rms * rms / shifts;
            }
            assertAtMost(1.1 * WorstHeat.apart(weights, DARK, FULL, ceiling), Math.sqrt(square));
        }
    }

    /**
     * The bound is reached: among all sets of pixels lit for different parts of the time, one heats as much (every set of up to ten
     * pixels).
     */
    @Test
    void someSetOfPixelsReachesIt() {
        for (int round = 0; round < 40; round++) {
            int pixels = 2 + chance.nextInt(9);
            double[] weights = weights(pixels);
            double lit = chance.nextDouble() * pixels;
            double ceiling = DARK * pixels + lit * (FULL - DARK);
            assertEquals(best(weights, lit), WorstHeat.together(weights, DARK, FULL, ceiling), 1e-9);
        }
    }

    /** The greatest mean square of any two sets, mixed so that no more than {@code lit} pixels are lit on the average. */
    private static double best(double[] weights, double lit) {
        int sets = 1 << weights.length;
        double best = 0;
        for (int a = 0; a < sets; a++) {
            for (int b = 0; b < sets; b++) {
                double few = Integer.bitCount(a);
                double many = Integer.bitCount(b);
                if (few <= lit) {
                    best = Math.max(best, square(weights, a));
                }
                if (few <= lit && lit <= many) {
                    double share = many == few ? 0 : (lit - few) / (many - few);
                    best = Math.max(best, (1 - share) * square(weights, a) + share * square(weights, b));
                }
            }
        }
        return Math.sqrt(best);
    }

    private static double square(double[] weights, int set) {
        double amps = 0;
        for (int i = 0; i < weights.length; i++) {
            amps += weights[i] * ((set >> i & 1) == 1 ? FULL : DARK);
        }
        return amps * amps;
    }

    private double[] duties(int pixels, double ceiling) {
        double[] duties = chance.doubles(pixels).toArray();
        double most = (ceiling - DARK * pixels) / (FULL - DARK);
        double sum = Arrays.stream(duties).sum();
        double share = Math.min(1, most / sum);
        return Arrays.stream(duties)
                .map(duty -> Math.floor(share * duty * STEPS) / STEPS)
                .toArray();
    }

    private static double rms(double[] weights, double[] duties, double[] starts) {
        double square = 0;
        for (int step = 0; step < STEPS; step++) {
            double amps = 0;
            for (int i = 0; i < weights.length; i++) {
                double phase = ((step + 0.5) / STEPS + starts[i]) % 1;
                amps += weights[i] * (phase < duties[i] ? FULL : DARK);
            }
            square += amps * amps / STEPS;
        }
        return Math.sqrt(square);
    }

    @Test
    void apartIsNeverAboveTogether() {
        for (int round = 0; round < 200; round++) {
            double[] weights = weights(1 + chance.nextInt(20));
            double ceiling = weights.length * (DARK + chance.nextDouble() * FULL);
            double apart = WorstHeat.apart(weights, DARK, FULL, ceiling);
            assertTrue(apart <= WorstHeat.together(weights, DARK, FULL, ceiling) + 1e-12);
        }
    }
}
