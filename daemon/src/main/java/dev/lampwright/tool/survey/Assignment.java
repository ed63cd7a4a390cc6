package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Gives each role the value for which most speaks, and each value one role at most. Values that belong together are judged in pairs, the
 * surest first; what too little speaks for is left open.
 */
final class Assignment {
    private static final int MOST_CANDIDATES = 60;
    private static final double HOPELESS = -2;
    private static final double LEAST_PAIR = 5.5;
    private static final double LEAST_ACTUAL = 3.5;
    private static final double LEAST_STATE = 2.5;

    /** The least that must speak for a role. */
    private static final Map<Role, Double> LEAST = Map.of(
            Role.BED_ACTUAL, LEAST_ACTUAL,
            Role.NOZZLE_ACTUAL, LEAST_ACTUAL,
            Role.CHAMBER_ACTUAL, LEAST_ACTUAL,
            Role.PROGRESS, 3.0,
            Role.LEFT, 3.0,
            Role.ELAPSED, 4.0,
            Role.DONE, 3.0,
            Role.FAULT_TEXT, 3.5,
            Role.CAMERA, 4.0);

    private final Thermometer thermometer;
    private final EvidenceTable bench;
    private final PlaceEvidence place = new PlaceEvidence();
    private final Set<Trail> used = new HashSet<>();
    private final Map<Role, Trail> filled = new EnumMap<>(Role.class);
    private final List<Found> found = new ArrayList<>();

    private record Pair(Couple couple, Trail one, Trail other, Judgement together, double score) {}

    private record Single(Role role, Trail trail, Judgement judgement) {}

    /**
     * Decides.
     *
     * @param trails all values
     */
    Assignment(Collection<Trail> trails) {
        thermometer = new Thermometer(trails);
        bench = new EvidenceTable(trails, thermometer);
        List<Pair> pairs = pairs();
        List<Single> singles = singles();
        findPlace(pairs, singles);
        placed(pairs).forEach(this::give);
        placedSingles(singles).forEach(this::give);
        giveState();
        found.sort(Comparator.comparing(Found::role));
    }

    /** What was decided, by role. */
    List<Found> found() {
        return List.copyOf(found);
    }

    private List<Pair> pairs() {
        List<Pair> pairs = new ArrayList<>();
        for (Couple couple : Couple.values()) {
            List<Trail> others = candidates(couple.second());
            for (Trail one : candidates(couple.first())) {
                others.stream().filter(other -> other != one).forEach(other -> addPair(pairs, couple, one, other));
            }
        }
        return pairs;
    }

    private void addPair(List<Pair> pairs, Couple couple, Trail one, Trail other) {
        Judgement together = couple.judge(one, other);
        double score = bench.of(one, couple.first()).score()
                + bench.of(other, couple.second()).score()
                + together.score();
        if (score >= LEAST_PAIR) {
            pairs.add(new Pair(couple, one, other, together, score));
        }
    }

    private List<Trail> candidates(Role role) {
        return bench.trails().stream()
                .filter(trail -> bench.of(trail, role).score() > HOPELESS)
                .sorted(Comparator.comparingDouble(
                        (Trail trail) -> -bench.of(trail, role).score()))
                .limit(MOST_CANDIDATES)
                .toList();
    }

    private List<Single> singles() {
        List<Single> singles = new ArrayList<>();
        for (Trail trail : bench.trails()) {
            LEAST.forEach((role, least) -> {
                Judgement judgement = bench.of(trail, role);
                if (judgement.score() >= least) {
                    singles.add(new Single(role, trail, judgement));
                }
            });
        }
        return singles;
    }

    /** Half of what speaks for a pair speaks for each of the two. */
    private void findPlace(List<Pair> pairs, List<Single> singles) {
        singles.forEach(single -> place.add(single.trail, single.role, single.judgement.score()));
        bench.trails()
                .forEach(trail ->
                        place.add(trail, Role.STATE, bench.of(trail, Role.STATE).score()));
        for (Pair pair : pairs) {
            place.add(pair.one, pair.couple.first(), pair.score / 2);
            place.add(pair.other, pair.couple.second(), pair.score / 2);
        }
        place.settle();
    }

    private List<Pair> placed(List<Pair> pairs) {
        return pairs.stream()
                .map(pair -> new Pair(
                        pair.couple,
                        pair.one,
                        pair.other,
                        pair.together,
                        pair.score
                                + place.weigh(pair.one, pair.couple.first()).weight()
                                + place.weigh(pair.other, pair.couple.second()).weight()))
                .filter(pair -> pair.score >= LEAST_PAIR)
                .sorted(Comparator.comparingDouble((Pair pair) -> -pair.score)
                        .thenComparing(pair -> order(pair.one))
                        .thenComparing(pair -> order(pair.other)))
                .toList();
    }

    private List<Single> placedSingles(List<Single> singles) {
        return singles.stream()
                .map(single -> new Single(
                        single.role, single.trail, single.judgement.with(place.weigh(single.trail, single.role))))
                .filter(single -> single.judgement.score() >= LEAST.get(single.role))
                .sorted(Comparator.comparingDouble((Single single) -> -single.judgement.score())
                        .thenComparing(single -> order(single.trail)))
                .toList();
    }

    /** What decides where as much speaks for one as for another, so that the same messages always give the same answer. */
    private static String order(Trail trail) {
        return trail.source().topicFilter() + ' ' + trail.source().place();
    }

    private void give(Pair pair) {
        boolean free =
                !filled.containsKey(pair.couple.first()) && !used.contains(pair.one) && !used.contains(pair.other);
        if (free) {
            give(pair, pair.couple.first(), pair.one);
            give(pair, pair.couple.second(), pair.other);
        }
    }

    /** Each of a pair gives its own reasons, and the score is that of both together. */
    private void give(Pair pair, Role role, Trail trail) {
        List<String> reasons = bench.of(trail, role).and(pair.together).reasons();
        give(role, trail, new Judgement(pair.score, reasons));
    }

    /** The state comes last, since what the printer did by its readings says what its words mean. */
    private void giveState() {
        HeardPhases doings = new HeardPhases(filled);
        MeaningEvidence meaning = new MeaningEvidence(doings);
        bench.trails().stream()
                .filter(trail -> !used.contains(trail))
                .map(trail -> new Single(
                        Role.STATE,
                        trail,
                        bench.of(trail, Role.STATE)
                                .with(place.weigh(trail, Role.STATE))
                                .with(meaning.weigh(trail, Role.STATE))))
                .filter(single -> single.judgement.score() >= LEAST_STATE)
                .min(Comparator.comparingDouble((Single single) -> -single.judgement.score())
                        .thenComparing(single -> order(single.trail)))
                .ifPresent(best -> give(Role.STATE, best.trail, best.judgement, doings.meanings(best.trail)));
    }

    private void give(Single single) {
        if (!filled.containsKey(single.role) && !used.contains(single.trail)) {
            give(single.role, single.trail, single.judgement);
        }
    }

    private void give(Role role, Trail trail, Judgement judgement) {
        give(role, trail, judgement, Map.of());
    }

    private void give(Role role, Trail trail, Judgement judgement, Map<String, PrinterState> meanings) {
        filled.put(role, trail);
        used.add(trail);
        Optional<HeatedPart> heater = HeatedPart.of(role);
        Unit unit = heater.isPresent() ? thermometer.unit(trail) : UnitGuess.of(trail, role);
        Optional<String> doubt = heater.isPresent() ? thermometer.doubt(trail) : UnitGuess.doubt(trail, role);
        found.add(new Found(
                role,
                trail.source(),
                unit,
                trail.words(),
                meanings,
                doubt.stream().toList(),
                judgement.score(),
                judgement.reasons()));
    }
}
