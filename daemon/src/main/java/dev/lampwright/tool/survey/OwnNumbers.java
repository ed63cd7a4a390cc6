package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Numbers of a printer that have no role in Lampwright but that light may well follow: a fan, humidity, remaining filament, how fast and
 * how much it prints, and whatever else has a unit. The name must match as a whole word; the unit follows from the name, from the unit
 * after the number, or from the numbers.
 */
final class OwnNumbers {
    private static final int MOST_NAME_CHARS = 30;

    private final UnclaimedValues around;
    private final Thermometer thermometer;
    private final Set<String> names = new HashSet<>();
    private final List<FoundOwn> found = new ArrayList<>();

    /**
     * A number that may be proposed.
     *
     * @param level the name that says what it is, counted from the outermost; for a number of unknown kind, its own name
     * @param called its name from there on
     */
    private record Candidate(Trail trail, NumberKind kind, int level, List<String> called, NumberForm form) {}

    /**
     * Searches.
     *
     * @param around what is known, and what is left
     * @param heaters values that are heaters'
     * @param thermometer what determines the unit of temperatures
     */
    OwnNumbers(UnclaimedValues around, Collection<Trail> heaters, Thermometer thermometer) {
        this.around = around;
        this.thermometer = thermometer;
        around.free().stream()
                .filter(trail -> !heaters.contains(trail))
                .map(this::candidate)
                .flatMap(Optional::stream)
                .sorted(Comparator.comparing((Candidate candidate) -> !candidate.form.certain())
                        .thenComparing(Candidate::kind)
                        .thenComparing(candidate -> candidate.trail.order()))
                .forEach(this::give);
    }

    /** Those that are certain first. */
    List<FoundOwn> found() {
        return List.copyOf(found);
    }

    private Optional<Candidate> candidate(Trail trail) {
        int from = around.ownFrom(trail);
        for (NumberKind kind : NumberKind.values()) {
            int level = kind.concept().map(trail.names()::wholeDepthOf).orElse(-1);
            if (level >= from) {
                List<String> called = trail.names().levels().stream()
                        .skip(level)
                        .flatMap(List::stream)
                        .toList();
                return kind.form(trail, called).map(form -> new Candidate(trail, kind, level, called, form));
            }
        }
        List<String> called = trail.names().own();
        return other(trail, called).map(form -> new Candidate(trail, NumberKind.OTHER, -1, called, form));
    }

    /** A number of an unknown kind must have a unit. */
    private Optional<NumberForm> other(Trail trail, List<String> words) {
        ValueName called = trail.names();
        boolean jobs = List.of(Concept.TIME, Concept.LEFT, Concept.ELAPSED, Concept.LAYER, Concept.PROGRESS).stream()
                .anyMatch(called::ownSpeaksOf);
        if (called.ownSpeaksOf(Concept.TEMPERATURE) && !called.speakOf(Concept.TARGET)) {
            Unit unit = thermometer.gauge(trail).unit();
            boolean heated = List.of(HeatedPart.values()).stream().anyMatch(heater -> called.speakOf(heater.concept()));
            boolean flag = trail.least() == trail.most() && trail.whole() && trail.most() <= 1;
            return heated || flag
                    ? Optional.empty()
                    : Optional.of(
                            NumberForm.open(unit == Unit.OWN ? Unit.CELSIUS.word() : unit.word(), "a temperature"));
        }
        return jobs ? Optional.empty() : NumberKind.OTHER.form(trail, words);
    }

    private void give(Candidate candidate) {
        NumberForm form = candidate.form;
        found.add(new FoundOwn(
                free(name(candidate)),
                candidate.trail.source(),
                form.unit(),
                1,
                form.range(),
                form.certain(),
                reasons(candidate)));
    }

    private static List<String> reasons(Candidate candidate) {
        List<String> reasons = new ArrayList<>();
        candidate
                .kind
                .concept()
                .ifPresent(concept ->
                        reasons.add("“" + word(candidate.trail, concept, candidate.level) + "” speaks of it"));
        reasons.add(candidate.form.certain() ? candidate.form.reason() : Remarks.doubt(candidate.form.reason()));
        return reasons;
    }

    private static String word(Trail trail, Concept concept, int level) {
        return trail.names().levels().get(level).stream()
                .filter(Vocabulary.words(concept)::contains)
                .findFirst()
                .orElseThrow();
    }

    /** Its name, without its unit and without words that suit any value. */
    private static String name(Candidate candidate) {
        List<String> called = candidate.called;
        List<String> telling = called.subList(0, called.size() - NumberForm.unitWords(called)).stream()
                .filter(word -> called.size() == 1 || !isForAnyValue(word))
                .toList();
        String name = String.join("_", telling);
        boolean good = name.matches("[a-z][a-z0-9_]*") && name.length() <= MOST_NAME_CHARS;
        return good ? name : candidate.kind.word();
    }

    private static boolean isForAnyValue(String word) {
        return Vocabulary.words(Concept.ACTUAL).contains(word);
    }

    private String free(String name) {
        boolean taken = isTaken(name);
        String free = name;
        for (int i = taken && !names.contains(name) ? 1 : 2; isTaken(free); i++) {
            free = name + "_" + i;
        }
        names.add(free);
        return free;
    }

    /** Names of parts and signals that Lampwright knows cannot name a reading. */
    private boolean isTaken(String name) {
        return names.contains(name)
                || List.of("bed", "nozzle", "chamber", "job", "still_hot").contains(name);
    }
}
