package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class HeatingCurvesTest {
    private static double time(int number, double share) {
        double place = HeatingCurves.place(share);
        return HeatingCurves.curve(number).time((int) place, place - (int) place);
    }

    @Test
    void aPlaceIsWhereItsShareIs() {
        for (int i = 0; i < HeatingCurves.count(); i += HeatingCurves.KIN) {
            if (HeatingCurves.curve(i).reach() > 1) {
                for (double share = 0.05; share < 0.99; share += 0.01) {
                    double slope = HeatingCurves.curve(i).slope((int) HeatingCurves.place(share));
                    assertEquals(0.01 / slope, time(i, share + 0.005) - time(i, share - 0.005), 0.06 / slope * 0.05);
                }
            }
        }
    }

    /** That is why a family can be fitted to readings at once. */
    @Test
    void aKinIsTheSameUntilTheBandBegins() {
        for (int i = 0; i < HeatingCurves.count(); i++) {
            int first = i - i % HeatingCurves.KIN;
            double band = HeatingCurves.curve(i).band();
            assertEquals(i == first, band == HeatingCurves.NO_BAND);
            if (i != first) {
                int number = (i - first - 1) / HeatingCurves.ways();
                assertEquals(1 - band, HeatingCurves.bandBegins(number), 1e-12);
                for (double share = 0; share < 0.95 - band; share += 0.05) {
                    assertEquals(time(first, share), time(i, share), 1e-6);
                }
                assertTrue(!(time(i, 0.98) < time(first, 0.98)), "it is throttled");
            }
        }
    }

    /** Without lag and band, and except for the bend, it is −reach·ln(1 − share ÷ reach). */
    @Test
    void isNearToTheClosedForm() {
        for (int i = 0; i < HeatingCurves.count(); i += HeatingCurves.KIN) {
            double reach = HeatingCurves.curve(i).reach();
            boolean isFirstOfReach = i == 0
                    || reach != HeatingCurves.curve(i - HeatingCurves.KIN).reach();
            if (isFirstOfReach && reach > 1.2) {
                double closed = -reach * Math.log(1 - 0.9 / reach);
                assertEquals(closed, time(i, 0.9), 0.06 * closed, "reach " + reach);
            }
        }
    }

    @Test
    void someNeverGetThere() {
        for (int i = 0; i < HeatingCurves.count(); i++) {
            boolean arrives = Double.isFinite(time(i, 0.98));
            assertEquals(HeatingCurves.curve(i).reach() > 1, arrives, "curve " + i);
        }
    }
}
