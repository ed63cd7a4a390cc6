package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * A word, a code or a flag that a place reported, and what the printer was doing at the time.
 *
 * @param word as a binding must name it; {@code *} stands for numbers that may differ next time
 * @param seconds how long the printer did each thing during that time, in s; leaving out what it did not do
 * @param times how many times the place changed to it
 * @param state the state that it stands for, according to the word or to what the printer did; empty if uncertain
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
     * How long the place reported it.
     *
     * @return s
     */
    public double total() {
        return seconds.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    /** The same with a known meaning. */
    Said meaning(PrinterState known) {
        return new Said(word, seconds, times, Optional.of(known), true);
    }

    /** How long the printer did one thing during that time, in s. */
    double seconds(Doing doing) {
        return seconds.getOrDefault(doing, 0.0);
    }

    /** For how long of that time it is clear what the printer did, in s. */
    double clear() {
        return total() - seconds(Doing.UNCLEAR);
    }

    /** Whether it came while the printer was hot and the job stood still, and hardly ever otherwise: a pause or a fault. */
    boolean isStandstill() {
        return seconds(Doing.STANDING) > 0 && seconds(Doing.STANDING) >= 0.7 * clear();
    }

    /**
     * What the printer did during that time, the longest first.
     *
     * @return for example {@code went on with the job 850 s, heated up 12 s}
     */
    public String meanwhile() {
        return seconds.entrySet().stream()
                .filter(entry -> entry.getValue() >= 1)
                .sorted(Map.Entry.<Doing, Double>comparingByValue().reversed())
                .map(entry -> entry.getKey().words() + " for " + Math.round(entry.getValue()) + " s")
                .reduce((one, other) -> one + ", " + other)
                .orElse("did nothing for long enough to be sure");
    }
}
