package dev.lampwright.survey;

import dev.lampwright.printer.Unit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Gives each role the value for which most speaks, and each value one role at most. Temperatures and their targets are judged in pairs, the
 * surest first; what too little speaks for is left open.
 */
final class Assignment {
    private static final int MOST_CANDIDATES = 60;
    private static final double HOPELESS = -2;
    private static final double LEAST_PAIR = 5.5;
    private static final double LEAST_ACTUAL = 3.5;

    /** The least that must speak for a role, in the order in which they are given away. */
    private static final Map<Role, Double> LEAST = Map.of(
            Role.STATE, 2.5,
            Role.PROGRESS, 3.0,
            Role.LEFT, 3.0,
            Role.ELAPSED, 3.0,
            Role.DONE, 3.0,
            Role.TOTAL, 3.0,
            Role.FAULT_TEXT, 3.5,
            Role.CAMERA, 4.0);

    private final Thermometer thermometer;
    private final Bench bench;
    private final Set<Trail> used = new HashSet<>();
    private final Set<Role> filled = EnumSet.noneOf(Role.class);
    private final List<Found> found = new ArrayList<>();

    private record Pair(Heater heater, Trail actual, Trail target, Judgement together, Judgement judgement) {}

    private record Single(Role role, Trail trail, Judgement judgement) {}

    /**
     * Decides.
     *
     * @param trails all values
     */
    Assignment(Collection<Trail> trails) {
        thermometer = new Thermometer(trails);
        bench = new Bench(trails, thermometer);
        pairs().forEach(this::give);
        singles().forEach(this::give);
        found.sort(Comparator.comparing(Found::role));
    }

    /** What was decided, by role. */
    List<Found> found() {
        return List.copyOf(found);
    }

    private List<Pair> pairs() {
        List<Trail> actuals = candidates(EnumSet.of(Role.BED_ACTUAL, Role.NOZZLE_ACTUAL, Role.CHAMBER_ACTUAL));
        List<Trail> targets = candidates(EnumSet.of(Role.BED_TARGET, Role.NOZZLE_TARGET, Role.CHAMBER_TARGET));
        List<Pair> pairs = new ArrayList<>();
        for (Trail actual : actuals) {
            for (Trail target : targets) {
                if (actual != target) {
                    addPairs(pairs, actual, target);
                }
            }
        }
        pairs.sort(Comparator.comparingDouble((Pair pair) -> -pair.judgement.score()));
        return pairs;
    }

    private void addPairs(List<Pair> pairs, Trail actual, Trail target) {
        Judgement together = bench.ofPair(actual, target);
        for (Heater heater : Heater.values()) {
            Judgement judgement = bench.of(actual, heater.actual())
                    .and(bench.of(target, heater.target()))
                    .and(together);
            if (judgement.score() >= LEAST_PAIR) {
                pairs.add(new Pair(heater, actual, target, together, judgement));
            }
        }
    }

    private List<Trail> candidates(Set<Role> roles) {
        return bench.trails().stream()
                .filter(trail -> best(trail, roles) > HOPELESS)
                .sorted(Comparator.comparingDouble((Trail trail) -> -best(trail, roles)))
                .limit(MOST_CANDIDATES)
                .toList();
    }

    private double best(Trail trail, Set<Role> roles) {
        return roles.stream().mapToDouble(role -> bench.of(trail, role).score()).max().orElse(HOPELESS);
    }

    private List<Single> singles() {
        List<Single> singles = new ArrayList<>();
        for (Trail trail : bench.trails()) {
            for (Role role : Role.values()) {
                Optional<Double> least = least(role);
                Judgement judgement = bench.of(trail, role);
                if (least.isPresent() && judgement.score() >= least.get()) {
                    singles.add(new Single(role, trail, judgement));
                }
            }
        }
        singles.sort(Comparator.comparingDouble((Single single) -> -single.judgement.score())
                .thenComparing(single -> single.trail.source().topicFilter())
                .thenComparing(single -> single.trail.source().place()));
        return singles;
    }

    private static Optional<Double> least(Role role) {
        boolean actual = Heater.of(role).filter(heater -> heater.actual() == role).isPresent();
        return actual ? Optional.of(LEAST_ACTUAL) : Optional.ofNullable(LEAST.get(role));
    }

    private void give(Pair pair) {
        boolean free = !filled.contains(pair.heater.actual())
                && !used.contains(pair.actual)
                && !used.contains(pair.target);
        if (free) {
            give(pair, pair.heater.actual(), pair.actual);
            give(pair, pair.heater.target(), pair.target);
        }
    }

    /** Each of a pair gives its own reasons, and the score is that of both together. */
    private void give(Pair pair, Role role, Trail trail) {
        List<String> reasons = bench.of(trail, role).and(pair.together).reasons();
        give(role, trail, new Judgement(pair.judgement.score(), reasons));
    }

    private void give(Single single) {
        if (!filled.contains(single.role) && !used.contains(single.trail)) {
            give(single.role, single.trail, single.judgement);
        }
    }

    private void give(Role role, Trail trail, Judgement judgement) {
        filled.add(role);
        used.add(trail);
        Unit unit = Heater.of(role).isPresent() ? thermometer.unit(trail) : UnitGuess.of(trail, role);
        found.add(new Found(role, trail.source(), unit, trail.words(), judgement.score(), judgement.reasons()));
    }
}
