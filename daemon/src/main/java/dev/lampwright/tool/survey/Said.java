package dev.lampwright.tool.survey;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.printer.PrinterState;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

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
        return doings().stream().map(Phrase::english).collect(Collectors.joining(", "));
    }

    /** The same, one by one. */
    List<Phrase> doings() {
        List<Phrase> doings = seconds.entrySet().stream()
                .filter(entry -> entry.getValue() >= 1)
                .sorted(Map.Entry.<Doing, Double>comparingByValue().reversed())
                .map(entry -> doing(entry.getKey(), Math.round(entry.getValue())))
                .toList();
        return doings.isEmpty()
                ? List.of(Phrase.of("doing_nothing_long", "did nothing for long enough to be sure"))
                : doings;
    }

    private static Phrase doing(Doing doing, long seconds) {
        return Phrase.of(
                "doing_" + doing.name().toLowerCase(Locale.ROOT),
                doing.words() + " for " + seconds + " s",
                "seconds",
                seconds);
    }
}
