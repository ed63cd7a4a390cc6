package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Looks for the place that reports the state, once the readings are known: they show what its words mean. */
final class StateSearch {
    private static final double ENOUGH = 2.5;
    private static final double WORTH_A_LOOK = 1;
    private static final int MOST_SHOWN = 6;
    private static final double NEARLY_ALL = 0.8;
    private static final double HARDLY = 0.1;
    private static final double HALF = 0.5;
    private static final double LEAST_APART_S = 15;

    private final Doings doings;
    private final MeaningEvidence meaning;
    private List<Candidate> candidates;

    /** A place with the evidence for it. */
    record Candidate(Trail trail, Judgement judgement, List<Said> said) {}

    /**
     * Searches.
     *
     * @param readings the values whose role is known
     * @param trails all values
     * @param plain the evidence for a value without regard to what the printer did
     */
    StateSearch(Map<Role, Trail> readings, Collection<Trail> trails, Function<Trail, Judgement> plain) {
        doings = new Doings(readings, trails);
        meaning = new MeaningEvidence(doings);
        candidates = trails.stream()
                .filter(trail -> !readings.containsValue(trail))
                .map(trail -> candidate(trail, plain.apply(trail)))
                .filter(candidate -> candidate.judgement.score() >= WORTH_A_LOOK)
                .sorted(Comparator.comparingDouble((Candidate candidate) -> -candidate.judgement.score())
                        .thenComparing(candidate -> candidate.trail.order()))
                .limit(MOST_SHOWN)
                .toList();
    }

    private Candidate candidate(Trail trail, Judgement plain) {
        boolean hopeless = plain.score() + MeaningEvidence.MOST < WORTH_A_LOOK;
        return hopeless
                ? new Candidate(trail, plain, List.of())
                : new Candidate(trail, plain.with(meaning.weigh(trail, Role.STATE)), meaning.said(trail));
    }

    /** The best place, if there is enough evidence. */
    Optional<Candidate> best() {
        return candidates.stream()
                .findFirst()
                .filter(candidate -> candidate.judgement.score() >= ENOUGH
                        && candidate.said.stream().anyMatch(said -> said.state().isPresent()));
    }

    /**
     * What shows a state in addition to the best place.
     *
     * @param trails the values that may be the printer's
     */
    ConditionSearch conditions(List<Trail> trails) {
        Set<PrinterState> known = best().stream()
                .flatMap(candidate -> candidate.said.stream())
                .flatMap(said -> said.state().stream())
                .collect(Collectors.toSet());
        List<Trail> others = trails.stream()
                .filter(trail ->
                        best().filter(candidate -> candidate.trail == trail).isEmpty())
                .toList();
        ConditionSearch search = new ConditionSearch(others, meaning::said, doings, known);
        search.found().stream()
                .filter(condition -> condition.state() == PrinterState.FAULT)
                .findFirst()
                .ifPresent(fault -> others.stream()
                        .filter(trail -> trail.source().equals(fault.source()))
                        .findFirst()
                        .ifPresent(trail -> sortStandstills(fault, trail)));
        return search;
    }

    /**
     * If a fault is reported separately, a word during which the job stood still is a fault if it comes together with it, and a pause if it
     * hardly ever does, or also lasts long without it. The fault that is reported separately takes precedence over the word.
     */
    private void sortStandstills(FoundCondition fault, Trail faults) {
        boolean heard = faults.said().texts().stream().anyMatch(fault::isMetBy);
        if (heard) {
            candidates = candidates.stream()
                    .map(candidate -> new Candidate(
                            candidate.trail,
                            candidate.judgement,
                            candidate.said.stream()
                                    .map(said -> sorted(said, candidate.trail, fault, faults))
                                    .toList()))
                    .toList();
        }
    }

    private Said sorted(Said said, Trail trail, FoundCondition fault, Trail faults) {
        if (said.state().isPresent() || !said.isStandstill()) {
            return said;
        }
        double apart = doings.seconds(second -> trail.said().stands(said.word(), second)
                && !fault.isMetBy(faults.said().textAt(second)));
        double share = doings.share(
                second -> trail.said().stands(said.word(), second),
                second -> fault.isMetBy(faults.said().textAt(second)));
        if (share >= NEARLY_ALL) {
            return said.meaning(PrinterState.FAULT);
        }
        return share <= HARDLY || (share <= HALF && apart >= LEAST_APART_S) ? said.meaning(PrinterState.HELD) : said;
    }

    /** Every place that may be the one, the likeliest first. */
    List<StatePlace> places() {
        Optional<Candidate> best = best();
        return candidates.stream()
                .map(candidate -> new StatePlace(
                        candidate.trail.source(),
                        candidate.said,
                        candidate.judgement.score(),
                        best.filter(candidate::equals).isPresent()))
                .toList();
    }
}
