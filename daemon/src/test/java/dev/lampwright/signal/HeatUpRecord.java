package dev.lampwright.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;

/**
 * An invented heat-up, as reported by a printer.
 *
 * @param targetC target temperature
 * @param startC temperature at the beginning
 * @param readings the reported readings
 * @param readyS when the sensor truly comes within 2 K of the target
 */
record HeatUpRecord(double targetC, double startC, List<Told> readings, double readyS) {
    static final double ROOM_C = 22;
    private static final double AFTERWARDS_S = 30;

    /** One reading: when, in s from the beginning, and what, in °C. */
    record Told(double seconds, double celsius) {}

    /**
     * How a printer reports it.
     *
     * @param everyS mean time between messages
     * @param uneven share by which that varies
     * @param noiseK standard deviation of the sensor's noise
     * @param roundedToK what readings are rounded to
     */
    record Telling(double everyS, double uneven, double noiseK, double roundedToK) {
        static final Telling FINE = new Telling(1, 0.05, 0.05, 0.01);
        static final Telling NOISY = new Telling(2, 0.3, 0.3, 0.1);
        static final Telling COARSE = new Telling(2, 0.5, 0.1, 1);
        static final Telling SELDOM = new Telling(5, 0.5, 0.1, 1);
    }

    static HeatUpRecord of(HeaterModel.Build build, double targetC, Telling telling, long seed) {
        HeaterModel heater = new HeaterModel(build, ROOM_C, ROOM_C);
        return told(
                targetC,
                ROOM_C,
                telling,
                new SplittableRandom(seed),
                HeaterModel.STEP_S,
                () -> heater.step(targetC),
                Double.POSITIVE_INFINITY);
    }

    /**
     * The reports of a heat-up.
     *
     * @param stepS time between two temperatures, in s
     * @param felt the next temperature that the sensor feels, in °C
     * @param longestS it is abandoned after this many s; {@link #readyS} is infinite then
     */
    static HeatUpRecord told(
            double targetC,
            double startC,
            Telling telling,
            SplittableRandom chance,
            double stepS,
            DoubleSupplier felt,
            double longestS) {
        List<Told> readings = new ArrayList<>();
        double ready = Double.POSITIVE_INFINITY;
        double next = 0;
        for (int step = 1; step * stepS < Math.min(ready, longestS) + AFTERWARDS_S; step++) {
            double seconds = step * stepS;
            double celsius = felt.getAsDouble();
            if (celsius >= targetC - ReadyTime.WITHIN_K) {
                ready = Math.min(ready, seconds);
            }
            if (seconds >= next) {
                double noisy = celsius + telling.noiseK * chance.nextGaussian();
                readings.add(new Told(seconds, Math.round(noisy / telling.roundedToK) * telling.roundedToK));
                next = seconds + telling.everyS * (1 + telling.uneven * (2 * chance.nextDouble() - 1));
            }
        }
        return new HeatUpRecord(targetC, startC, readings, ready);
    }

    /** When a reading first shows a share of the way, in s. */
    double reaches(double share) {
        return readings.stream()
                .filter(told -> told.celsius >= startC + share * (targetC - startC))
                .mapToDouble(Told::seconds)
                .findFirst()
                .orElseThrow();
    }
}
