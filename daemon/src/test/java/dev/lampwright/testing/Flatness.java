package dev.lampwright.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Does a figure stay flat? Fits a straight line to the measurements after the warm-up, by least squares, which shows how much the figure
 * has grown from one end to the other.
 */
public final class Flatness {
    /** Fewer measurements show no slope. */
    public static final int FEWEST = 8;

    private final String what;
    private final double tolerance;
    private final double warmUpSeconds;
    private final List<Sample> samples = new ArrayList<>();

    private record Sample(double seconds, double value) {}

    /**
     * Starts without measurements.
     *
     * @param what what is measured, with its unit
     * @param tolerance how much it may grow
     * @param warmUpSeconds measurements before that are ignored
     */
    public Flatness(String what, double tolerance, double warmUpSeconds) {
        this.what = what;
        this.tolerance = tolerance;
        this.warmUpSeconds = warmUpSeconds;
    }

    /** Adds a measurement at a time, in s since the start. */
    public void add(double seconds, double value) {
        samples.add(new Sample(seconds, value));
    }

    /** What is wrong, if anything is. */
    public Optional<String> judge() {
        if (!isJudged() || growth() <= tolerance) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "%s grew by %.1f, more than %.1f, after %.0f s",
                what,
                growth(),
                tolerance,
                warmUpSeconds));
    }

    /** Whether enough was measured after the warm-up. */
    public boolean isJudged() {
        return warm().size() >= FEWEST;
    }

    /** How much it grew after the warm-up. */
    public double growth() {
        List<Sample> warm = warm();
        double meanSeconds =
                warm.stream().mapToDouble(Sample::seconds).average().orElse(0);
        double meanValue = warm.stream().mapToDouble(Sample::value).average().orElse(0);
        double above = 0;
        double below = 0;
        for (Sample sample : warm) {
            above += (sample.seconds - meanSeconds) * (sample.value - meanValue);
            below += (sample.seconds - meanSeconds) * (sample.seconds - meanSeconds);
        }
        double span = warm.get(warm.size() - 1).seconds - warm.get(0).seconds;
        return below == 0 ? 0 : above / below * span;
    }

    private List<Sample> warm() {
        return samples.stream()
                .filter(sample -> sample.seconds >= warmUpSeconds)
                .toList();
    }

    /** The figures at the start, after the warm-up, and at the end. */
    @Override
    public String toString() {
        List<Sample> warm = warm();
        if (warm.isEmpty()) {
            return what + ": nothing measured after the warm-up";
        }
        String verdict = isJudged()
                ? String.format(Locale.ROOT, "slope %+.1f over the rest (at most %.1f)", growth(), tolerance)
                : "too few to judge";
        return String.format(
                Locale.ROOT,
                "%s: start %.1f, after %.0f s %.1f, end %.1f, %s",
                what,
                samples.get(0).value,
                warmUpSeconds,
                warm.get(0).value,
                samples.get(samples.size() - 1).value,
                verdict);
    }
}
