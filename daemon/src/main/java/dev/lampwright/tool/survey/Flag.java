package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * A value that is only ever on or off.
 *
 * @param trail what was seen of it
 * @param on the word for on, as it was reported, or as it corresponds to the word for off
 * @param said what the printer did while it was on; empty if it never was
 */
record Flag(Trail trail, String on, Optional<Said> said) {
    private static final List<List<String>> PAIRS = List.of(
            List.of("true", "false"),
            List.of("1", "0"),
            List.of("on", "off"),
            List.of("yes", "no"),
            List.of("y", "n"),
            List.of("ja", "nein"),
            List.of("ja", "nee"),
            List.of("oui", "non"),
            List.of("si", "no"),
            List.of("ano", "ne"),
            List.of("tak", "nie"));
    private static final Set<String> OFF = Set.of("false", "0", "off", "no", "n", "nein", "nee", "non", "ne", "nie");
    private static final double SELDOM = 0.1;
    private static final double MOSTLY = 0.7;

    /**
     * Evaluates a value.
     *
     * @param trail what was seen of it
     * @param all what it reported, and what the printer did during that time
     * @return empty if it is not a flag
     */
    static Optional<Flag> of(Trail trail, List<Said> all) {
        List<String> words = all.stream().map(Said::word).toList();
        return PAIRS.stream()
                .filter(pair -> !words.isEmpty()
                        && words.size() <= 2
                        && words.stream().allMatch(word -> pair.contains(word.toLowerCase(Locale.ROOT))))
                .findFirst()
                .map(pair -> {
                    Optional<Said> said = all.stream()
                            .filter(one -> !OFF.contains(one.word().toLowerCase(Locale.ROOT)))
                            .findFirst();
                    return new Flag(trail, said.map(Said::word).orElse(pair.get(0)), said);
                });
    }

    /** The state that its name suggests. */
    Optional<PrinterState> named() {
        return StateWords.stateOf(String.join(" ", trail.names().own()));
    }

    /**
     * Whether it can show a state, by what the printer did while it was on.
     *
     * @param state the state
     * @param doings what the printer did when
     */
    boolean canShow(PrinterState state, Doings doings) {
        if (said.isEmpty()) {
            return state == PrinterState.FAULT
                    || state == PrinterState.HELD
                    || state == PrinterState.STOPPED
                    || state == PrinterState.DONE;
        }
        double clear = Math.max(1, said.get().clear());
        double ahead = said.get().seconds(Doing.ADVANCING) / clear;
        double heats = said.get().seconds(Doing.HEATING) / clear;
        double prepares = said.get().seconds(Doing.PREPARING) / clear;
        double off = (said.get().seconds(Doing.RESTING)
                        + said.get().seconds(Doing.FINISHED)
                        + said.get().seconds(Doing.OFF))
                / clear;
        return switch (state) {
            case FAULT, HELD -> ahead <= SELDOM && heats <= SELDOM && off <= SELDOM;
            case STOPPED, DONE -> ahead <= SELDOM && heats <= SELDOM && off >= MOSTLY;
            case WARMING ->
                heats + prepares >= MOSTLY && heats > SELDOM && ahead <= SELDOM && covers(Doing.HEATING, doings);
            case PRINTING -> off <= SELDOM && covers(Doing.ADVANCING, doings);
            case IDLE -> off >= MOSTLY && ahead <= SELDOM && covers(Doing.RESTING, doings);
            case SILENT -> false;
        };
    }

    /** Whether it was on for most of the time in which the printer did something. */
    private boolean covers(Doing doing, Doings doings) {
        return said.map(one -> one.seconds(doing)).orElse(0.0) >= MOSTLY * doings.seconds(doing)
                && doings.seconds(doing) > 0;
    }

    /** Whether it was on only while the printer was hot and the job stood still. */
    boolean isStandstill() {
        return said.filter(Said::isStandstill).isPresent();
    }
}
