package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * A word, a code or a flag that a place said, and what the printer did meanwhile.
 *
 * @param word as a binding has to name it; {@code *} stands for numbers that may be others the next time
 * @param seconds for how long the printer did what meanwhile, in s; what it did not do is missing
 * @param times how often it was said anew
 * @param state the state that it stands for, by what it says or by what the printer did; empty if it is not certain
 * @param certain whether the readings show that state, rather than the word alone
 */
public record Said(String word, Map<Doing, Double> seconds, int times, Optional<PrinterState> state, boolean certain) {
    /** Keeps a copy of the map. */
    public Said {
        Map<Doing, Double> copy = new EnumMap<>(Doing.class);
        copy.putAll(seconds);
        seconds = Collections.unmodifiableMap(copy);
    }

    /**
     * For how long it stood.
     *
     * @return s
     */
    public double total() {
        return seconds.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    /** The same, of which it is known what it stands for. */
    Said meaning(PrinterState known) {
        return new Said(word, seconds, times, Optional.of(known), true);
    }

    /** For how long the printer did one thing meanwhile, in s. */
    double seconds(Doing doing) {
        return seconds.getOrDefault(doing, 0.0);
    }

    /** For how long it is clear what the printer did. */
    double clear() {
        return total() - seconds(Doing.UNCLEAR);
    }

    /** Whether it was said while the printer was hot and the job stood still, and hardly otherwise: a pause or a fault. */
    boolean isStandstill() {
        return seconds(Doing.STANDING) > 0 && seconds(Doing.STANDING) >= 0.7 * clear();
    }

    /**
     * What the printer did meanwhile, the longest first.
     *
     * @return for instance {@code went on with the job 850 s, heated up 12 s}
     */
    public String meanwhile() {
        return seconds.entrySet().stream()
                .filter(entry -> entry.getValue() >= 1)
                .sorted(Map.Entry.<Doing, Double>comparingByValue().reversed())
                .map(entry -> entry.getKey().words() + " for " + Math.round(entry.getValue()) + " s")
                .reduce((one, other) -> one + ", " + other)
                .orElse("did nothing for long enough to tell");
    }
}
