package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The guards' model of the current, fitted to readings, and whether the result is plausible. */
final class CurrentFit {
    /** How far readings may be off, as a share of the largest, and in mA. Our own choice: a plain meter is better than that. */
    private static final double MOST_SHARE_OFF = 0.05;

    private static final double MOST_OFF = 5;

    /** What the set-up can hold, in mA. */
    private static final double MOST_CHANNEL = 65.5;

    private final Setup setup;
    private final List<CurrentPattern> patterns;
    private final double[] readings;
    private final LeastSquares fit;

    private CurrentFit(Setup setup, List<CurrentPattern> patterns, double[] readings, LeastSquares fit) {
        this.setup = setup;
        this.patterns = patterns;
        this.readings = readings;
        this.fit = fit;
    }

    /**
     * Fits.
     *
     * @param setup the active set-up
     * @param patterns the patterns shown
     * @param measured the reading for each, in mA
     */
    static CurrentFit of(Setup setup, List<CurrentPattern> patterns, List<Double> measured) {
        double[] readings = measured.stream().mapToDouble(Double::doubleValue).toArray();
        List<double[]> rows =
                patterns.stream().map(pattern -> pattern.factors(setup)).toList();
        return new CurrentFit(setup, patterns, readings, LeastSquares.of(rows, readings));
    }

    /** How far readings are off the model, in mA. */
    double deviation() {
        return fit.deviation();
    }

    /** Why the readings are not plausible; empty if they are. */
    Optional<Phrase> nonsense() {
        double largest = IntStream.range(0, readings.length)
                .mapToDouble(i -> readings[i])
                .max()
                .orElse(0);
        if (fit.deviation() > Math.max(MOST_OFF, MOST_SHARE_OFF * largest)) {
            int worst = fit.worst();
            double model = readings[worst] - fit.residual(worst);
            return Optional.of(Phrase.of(
                    "current_unlikely",
                    "the reading for " + patterns.get(worst).words() + " is " + TypedNumbers.shown(readings[worst])
                            + " mA, but the others suggest about " + Math.round(model) + " mA",
                    "pattern",
                    patterns.get(worst).phrase(),
                    "reading",
                    readings[worst],
                    "model",
                    Math.round(model)));
        }
        for (int i = 0; i < setup.channels(); i++) {
            double channel = fit.value(1 + i);
            if (channel <= 0 || channel > MOST_CHANNEL) {
                double tenths = Math.round(channel * 10) / 10.0;
                return Optional.of(Phrase.of(
                        "current_channel_odd",
                        "the channel " + setup.order().charAt(i) + " would take " + TypedNumbers.shown(tenths)
                                + " mA at full, for one pixel",
                        "channel",
                        setup.order().charAt(i),
                        "value",
                        tenths));
            }
        }
        return nonsenseInTheDark();
    }

    private Optional<Phrase> nonsenseInTheDark() {
        double dark = fit.value(0);
        if (dark < -2 * fit.error(0) - 1 || dark / setup.pixels() > MOST_CHANNEL) {
            return Optional.of(Phrase.of(
                    "current_dark_odd",
                    "the dark strip would take " + Math.round(dark) + " mA",
                    "value",
                    Math.round(dark)));
        }
        int ceiling = setup.ceilingsMilliamps().get(0);
        return dark >= ceiling
                ? Optional.of(Phrase.of(
                        "current_dark_over",
                        "the dark strip alone would take " + Math.round(dark) + " mA, more than the ceiling of "
                                + ceiling + " mA: go back to the supply with b, or measure the strip alone",
                        "value",
                        Math.round(dark),
                        "ceiling",
                        ceiling))
                : Optional.empty();
    }

    /** The currents found. */
    Findings.Currents currents() {
        List<Findings.Milliamps> channels = new ArrayList<>();
        for (int i = 0; i < setup.channels(); i++) {
            channels.add(new Findings.Milliamps(fit.value(1 + i), fit.error(1 + i)));
        }
        double pixels = setup.pixels();
        return new Findings.Currents(
                channels, new Findings.Milliamps(Math.max(0, fit.value(0)) / pixels, fit.error(0) / pixels));
    }
}
