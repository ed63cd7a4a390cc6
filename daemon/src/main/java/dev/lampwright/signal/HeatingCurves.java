package dev.lampwright.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Heat-ups of all likely heaters: how far each has got at what time. The way from start to target is 1, and the unit of time is that in
 * which full power would heat all the way without any loss.
 *
 * <p>A body of first order is heated at full power, dz/dt = power − z ÷ reach apart from a bend, and the sensor follows it, dy/dt = (z − y)
 * ÷ lag. When the sensor is closer to the target than a band, power falls proportionally, down to what holds the target; that is known from
 * the start, or found by an integral term. Dead time shifts a curve and is not part of it.
 *
 * <p>The equations are textbook heat balance and proportional-integral control. The grids and constants have no source: they were chosen
 * with the random heaters that {@code HeaterLot} keeps for development.
 */
final class HeatingCurves {
    /** The band of a heater that runs at full power until it reaches the target. */
    static final double NO_BAND = 0;

    /** How far full power would get, as a multiple of the way to the target. */
    private static final double[] REACHES = {
        0.5, 0.7, 0.85, 0.95, 1.03, 1.08, 1.15, 1.22, 1.3, 1.4, 1.55, 1.75, 2, 2.4, 3, 4, 7
    };

    /** The step between the logarithms of two bands. */
    static final double BAND_STEP = Math.log(2);

    private static final double[] LAGS = {0, 0.02, 0.045, 0.08, 0.12, 0.18};
    private static final double[] BANDS = {0.02, 0.04, 0.08, 0.16, 0.32};
    /** Times of the integral term; 0 if the holding power is known. */
    private static final double[] INTEGRALS = {0, 0.15, 0.5};

    private static final int POINTS = 64;
    private static final double LAST_SHARE = 0.995;
    /** Points are closer together near the target, where curves differ most. */
    private static final double DENSER = 1.5;

    /** Losses grow slightly faster than proportionally, by convection and radiation: z + BEND·z², and the same at the target. */
    private static final double BEND = 0.1;

    private static final double STEP = 1.0 / 64;
    private static final double LONGEST = 8;
    /** A heater that is past this and rises no faster than {@link #SETTLED} at full power does not reach it. */
    private static final double SETTLED_FROM = 0.1;

    private static final double SETTLED = 1e-3;

    /**
     * Curves come in families: one without a band, and after it those that are the same until their band begins, the narrowest band first.
     */
    static final int KIN = 1 + BANDS.length * INTEGRALS.length;

    private static final double[] SHARES = shares();
    private static final Curve[] ALL = all();

    private HeatingCurves() {}

    /** For one heater. */
    static final class Curve {
        private final double reach;
        private final double band;
        private final double stands;
        private final float[] times = new float[POINTS + 1];

        private Curve(double reach, double lag, double band, double integral, double stands) {
            this.reach = reach;
            this.band = band;
            this.stands = stands;
            run(lag, integral);
        }

        private void run(double lag, double integral) {
            double follows = lag == 0 ? 1 : -Math.expm1(-STEP / lag);
            double body = 0;
            double felt = 0;
            double held = integral == 0 ? 1 / reach : 0;
            int next = 0;
            for (double time = 0; time < LONGEST && next <= POINTS; time += STEP) {
                double power = band == NO_BAND ? 1 : (1 - felt) / band + held;
                if (power < 1 && integral > 0) {
                    held += (1 - felt) / band / integral * STEP;
                }
                double lost = body * (1 + BEND * body) / (1 + BEND) / reach;
                body += (Math.max(0, Math.min(1, power)) - lost) * STEP;
                double before = felt;
                felt += (body - felt) * follows;
                if (power >= 1 && felt > SETTLED_FROM && felt - before < SETTLED * STEP) {
                    break;
                }
                for (; next <= POINTS && felt >= SHARES[next]; next++) {
                    times[next] = (float) (time + STEP * (SHARES[next] - before) / (felt - before));
                }
            }
            Arrays.fill(times, next, POINTS + 1, Float.POSITIVE_INFINITY);
        }

        /** How far full power would get, as a multiple of the way to the target. */
        double reach() {
            return reach;
        }

        /** The distance from the target at which power starts to fall, as a share of the way; {@link #NO_BAND} if it does not. */
        double band() {
            return band;
        }

        /** How much of the logarithm of the reach it represents, shared by curves that differ only in the integral term. */
        double stands() {
            return stands;
        }

        /**
         * When it is at a {@link #place}.
         *
         * @param at number of the point before it
         * @param on how far on the way to the next
         * @return infinite or NaN if it does not get there
         */
        double time(int at, double on) {
            return times[at] + (times[at + 1] - times[at]) * on;
        }

        /** Its slope after a point, in shares of the way per unit of time; 0 if it ends before the next point, NaN if before this one. */
        double slope(int at) {
            return (SHARES[at + 1] - SHARES[at]) / (times[at + 1] - times[at]);
        }
    }

    private static Curve[] all() {
        List<Curve> all = new ArrayList<>();
        for (int r = 0; r < REACHES.length; r++) {
            double from = REACHES[Math.max(0, r - 1)];
            double to = REACHES[Math.min(REACHES.length - 1, r + 1)];
            double stands = Math.log(to / from) / 2;
            for (double lag : LAGS) {
                all.add(new Curve(REACHES[r], lag, NO_BAND, 0, stands));
                for (double band : BANDS) {
                    for (double integral : INTEGRALS) {
                        all.add(new Curve(REACHES[r], lag, band, integral, stands / INTEGRALS.length));
                    }
                }
            }
        }
        return all.toArray(Curve[]::new);
    }

    private static double[] shares() {
        double[] shares = new double[POINTS + 1];
        for (int i = 0; i <= POINTS; i++) {
            shares[i] = LAST_SHARE * (1 - Math.pow(1 - (double) i / POINTS, DENSER));
        }
        return shares;
    }

    /** How many there are. */
    static int count() {
        return ALL.length;
    }

    /** How many bands there are, without {@link #NO_BAND}. */
    static int bands() {
        return BANDS.length;
    }

    /** Share of the way at which a band begins; 0 is the narrowest, which begins last. */
    static double bandBegins(int band) {
        return 1 - BANDS[band];
    }

    /** The number of control variants for each band. */
    static int ways() {
        return INTEGRALS.length;
    }

    /** One of them, from 0 on. */
    static Curve curve(int number) {
        return ALL[number];
    }

    /**
     * Where a share of the way is among the points.
     *
     * @param share 0 to 1; outside, the nearest known value counts
     * @return number of the point before it, plus how far on the way to the next
     */
    static double place(double share) {
        double left = 1 - Math.max(0, Math.min(1, share / LAST_SHARE));
        return Math.min(POINTS - 1e-9, POINTS * (1 - Math.pow(left, 1 / DENSER)));
    }
}
