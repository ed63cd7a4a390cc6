package dev.lampwright.signal;

import java.util.Arrays;

/**
 * When a heat-up arrives, according to all {@link HeatingCurves} that its readings allow. Each is fitted to the readings, which gives its
 * beginning, its unit of time and how well it fits; the better it fits and the likelier it was beforehand, the more it counts. So the error
 * includes the uncertainty about which curve it is. Allocates nothing. The constants have no source: they were chosen with the random
 * heaters that {@code HeaterLot} keeps for development.
 */
final class CurveFit {
    /** The minimum number of samples for fitting a curve. */
    static final int LEAST_SAMPLES = 3;

    /** Readings are not trusted beyond this, in K: they are rounded. Common practice, no source. */
    private static final double LEAST_SCATTER_K = 0.1;
    /** No heater follows a curve more closely than this share of the way. Chosen by random heaters. */
    private static final double LEAST_SCATTER = 0.002;
    /** Readings are off a curve in the same direction, so no more of them count as independent. Chosen by random heaters. */
    private static final double MOST_INDEPENDENT = 15;
    /** A reading that is older by this share of the way counts for a third. Chosen by random heaters. */
    private static final double MEMORY = 0.5;
    /** Effects outside the model, such as a draught or a sagging supply: share of the time left. Chosen by random heaters. */
    private static final double UNFORESEEN = 0.08;

    private static final double UNFORESEEN_S = 0.7;
    /** The shortest time left, in s. */
    private static final double LEAST_S = 0.3;
    /** A squared misfit beyond this leaves nothing of a curve, e^−20. */
    private static final double HOPELESS = 40;

    private final int curves = HeatingCurves.count();
    private final int[] points = new int[Samples.MOST];
    private final double[] onward = new double[Samples.MOST];
    private final double[] memory = new double[Samples.MOST];
    private final double[] misfits = new double[curves];
    private final double[] units = new double[curves];
    private final double[] ends = new double[curves];
    private final double[] reachesNow = new double[curves];
    private final double[] spreads = new double[curves];
    private final double[] weights = new double[curves];
    private final WeightedLine line = new WeightedLine();
    private final WeightedLine[] before = new WeightedLine[HeatingCurves.bands()];
    private final int[] begins = new int[HeatingCurves.bands()];
    private Samples samples;
    private int from;
    private double startC;
    private double wayK;
    private double remembered;
    private int goalPoint;
    private double goalOnward;
    private double never = Double.NaN;
    private double secondsLeft = Double.NaN;
    private double errorS = Double.NaN;

    /** Creates one without a fit. */
    CurveFit() {
        Arrays.setAll(before, i -> new WeightedLine());
    }

    /** What is known about a heater beforehand. */
    interface Expectation {
        /**
         * How likely a curve is.
         *
         * @param curve its number
         * @param scaleS its unit of time, in s
         * @return 0 or more, in any unit
         */
        double of(int curve, double scaleS);
    }

    /**
     * Fits all curves.
     *
     * @param samples temperatures over time, in °C and s
     * @param from the first that is used
     * @param startC the temperature at which the heat-up began
     * @param targetC its target, above that
     * @param goalC the temperature from which the heater counts as ready, between both
     * @param expected what is known beforehand
     */
    void fit(Samples samples, int from, double startC, double targetC, double goalC, Expectation expected) {
        secondsLeft = Double.NaN;
        errorS = Double.NaN;
        never = Double.NaN;
        if (samples.size() - from < LEAST_SAMPLES) {
            return;
        }
        this.samples = samples;
        this.from = from;
        this.startC = startC;
        wayK = targetC - startC;
        double goal = HeatingCurves.place((goalC - startC) / wayK);
        goalPoint = (int) goal;
        goalOnward = goal - goalPoint;
        locate();
        for (int i = 0; i < curves; i += HeatingCurves.KIN) {
            layKin(i);
        }
        weigh(expected);
    }

    private double share(int sample) {
        return (samples.value(sample) - startC) / wayK;
    }

    private void locate() {
        double newest = 0;
        for (int i = from; i < samples.size(); i++) {
            newest = Math.max(newest, share(i));
        }
        for (int i = from; i < samples.size(); i++) {
            double place = HeatingCurves.place(share(i));
            points[i] = (int) place;
            onward[i] = place - points[i];
            memory[i] = Math.exp((share(i) - newest) / MEMORY);
        }
        remembered = 0;
        for (int i = from; i < samples.size(); i++) {
            remembered += memory[i];
        }
    }

    /** Fits curves that are the same until their bands begin: what they share is calculated once. */
    private void layKin(int first) {
        HeatingCurves.Curve curve = HeatingCurves.curve(first);
        int bands = HeatingCurves.bands();
        line.clear();
        for (int i = from; i < samples.size(); i++) {
            while (bands > 0 && share(i) >= HeatingCurves.bandBegins(bands - 1)) {
                bands--;
                before[bands].take(line);
                begins[bands] = i;
            }
            add(curve, i);
        }
        finish(first, curve);
        for (int i = 1; i < HeatingCurves.KIN; i++) {
            int band = (i - 1) / HeatingCurves.ways();
            if (band < bands) {
                layAs(first + i, first);
            } else {
                layOn(first + i, band);
            }
        }
    }

    private void layOn(int number, int band) {
        HeatingCurves.Curve curve = HeatingCurves.curve(number);
        line.take(before[band]);
        for (int i = begins[band]; i < samples.size(); i++) {
            add(curve, i);
        }
        finish(number, curve);
    }

    private void add(HeatingCurves.Curve curve, int sample) {
        double slope = curve.slope(points[sample]);
        double sinceNewest = samples.time(sample) - samples.time(samples.size() - 1);
        line.add(curve.time(points[sample], onward[sample]), sinceNewest, slope * slope * memory[sample]);
    }

    private void finish(int number, HeatingCurves.Curve curve) {
        int last = samples.size() - 1;
        double unit = line.slope();
        units[number] = unit;
        if (unit > 0) {
            double goal = curve.time(goalPoint, goalOnward);
            misfits[number] = line.rest() / (unit * unit * remembered);
            ends[number] = line.at(goal);
            reachesNow[number] = line.at(curve.time(points[last], onward[last]));
            spreads[number] = unit * unit * line.variance(goal);
        } else {
            // For a curve that does not get that far, or readings that do not rise.
            misfits[number] = Double.POSITIVE_INFINITY;
        }
    }

    /** If no reading is in its band, a curve fits as well as the first of its kin, and ends later. */
    private void layAs(int number, int like) {
        units[number] = units[like];
        misfits[number] = misfits[like];
        reachesNow[number] = reachesNow[like];
        spreads[number] = spreads[like];
        double later = HeatingCurves.curve(number).time(goalPoint, goalOnward)
                - HeatingCurves.curve(like).time(goalPoint, goalOnward);
        ends[number] = ends[like] + units[like] * later;
    }

    private void weigh(Expectation expected) {
        int count = samples.size() - from;
        double independent = Math.min(count, MOST_INDEPENDENT);
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i < curves; i++) {
            best = Math.min(best, misfits[i]);
        }
        double least = Math.max(LEAST_SCATTER, LEAST_SCATTER_K / wayK);
        double variance = Math.max(best * count / Math.max(1, count - 2), least * least);
        double arriving = 0;
        double staying = 0;
        for (int i = 0; i < curves; i++) {
            double off = independent * (misfits[i] - best) / variance;
            weights[i] = off < HOPELESS ? Math.exp(-off / 2) * expected.of(i, units[i]) : 0;
            if (Double.isInfinite(ends[i]) || Double.isNaN(ends[i])) {
                staying += weights[i];
                weights[i] = 0;
            }
            arriving += weights[i];
        }
        if (arriving > 0) {
            never = staying / (arriving + staying);
            sum(arriving, variance * count / independent);
        }
    }

    /** The time with the smallest average relative error: the mean of logarithms, in which short times count more. */
    private void sum(double all, double variance) {
        double logs = 0;
        double counting = 0;
        double now = 0;
        for (int i = 0; i < curves; i++) {
            if (weights[i] > 0) {
                weights[i] /= all;
                double end = Math.max(LEAST_S, ends[i]);
                double counts = weights[i] / end;
                logs += counts * Math.log(end);
                counting += counts;
                now += weights[i] * reachesNow[i];
            }
        }
        double middle = Math.exp(logs / counting);
        double squares = 0;
        for (int i = 0; i < curves; i++) {
            if (weights[i] > 0) {
                double off = Math.max(LEAST_S, ends[i]) - middle;
                squares += weights[i] * (off * off + variance * spreads[i]);
            }
        }
        double unforeseen = UNFORESEEN_S + UNFORESEEN * middle;
        secondsLeft = middle;
        errorS = Math.sqrt(squares + now * now + unforeseen * unforeseen);
    }

    /**
     * How long it takes from the newest sample to the goal.
     *
     * @return s, 0 or more; NaN if the samples do not show it
     */
    double secondsLeft() {
        return secondsLeft;
    }

    /**
     * The uncertainty of that time.
     *
     * @return standard error in s, above 0; NaN if {@link #secondsLeft} is
     */
    double errorS() {
        return errorS;
    }

    /**
     * How likely it is that the goal is never reached.
     *
     * @return 0 to 1; NaN if {@link #secondsLeft} is
     */
    double never() {
        return never;
    }

    /**
     * How much a curve counts.
     *
     * @param number which
     * @return share of all that arrive, 0 to 1
     */
    double weight(int number) {
        return weights[number];
    }

    /**
     * The unit of time of a curve that counts.
     *
     * @param number which
     * @return s
     */
    double unitS(int number) {
        return units[number];
    }
}
