package dev.lampwright.tool.survey;

import dev.lampwright.payload.Source;
import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Assigns to each role the value with the strongest evidence, and to each value one role at most. Values that belong together are judged in
 * pairs, the surest first; a role with too little evidence is left open.
 */
final class Assignment {
    private static final int MOST_CANDIDATES = 60;
    private static final double HOPELESS = -2;
    private static final double LEAST_PAIR = 5.5;
    private static final double BESIDE = 3;
    private static final double REST_S = 10;

    /** If neither of two pairs is better than the other by more than this, as with two nozzles, the first one heard is taken. */
    private static final double ALIKE = 0.5;

    /** Evidence from another printer's place counts less. */
    private static final double ELSEWHERE = -2;

    private static final double LEAST_ACTUAL = 3.5;

    /** The evidence that a role needs at least. */
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
    private final UnnamedHeaters unnamed;
    private final PlaceEvidence place = new PlaceEvidence();
    private final Set<Trail> used = new HashSet<>();
    private final Map<Role, Trail> filled = new EnumMap<>(Role.class);
    private final List<Found> found = new ArrayList<>();
    private final Map<Trail, String> doubts = new HashMap<>();
    private final List<StatePlace> statePlaces;
    private final List<FoundCondition> conditions;

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
        unnamed = new UnnamedHeaters(bench.trails(), thermometer);
        List<Pair> pairs = pairs();
        List<Single> singles = singles();
        findPlace(pairs, singles);
        placed(pairs).forEach(this::give);
        takeBackWhatIsNoPrinters();
        giveChamber();
        placedSingles(singles).forEach(this::give);
        giveUnnamedJob();
        StateSearch states = new StateSearch(filled, bench.trails(), this::judgedAsState);
        ConditionSearch search = states.conditions(bench.trails().stream()
                .filter(trail -> (!used.contains(trail) || trail == filled.get(Role.FAULT_TEXT))
                        && place.weigh(trail, Role.STATE).weight() > ELSEWHERE)
                .toList());
        conditions = search.found();
        statePlaces = new ArrayList<>(states.places());
        statePlaces.addAll(search.open());
        states.best().ifPresent(this::giveState);
        found.sort(Comparator.comparing(Found::role));
    }

    /** The decisions, by role. */
    List<Found> found() {
        return List.copyOf(found);
    }

    /** Every place that may report the state, the likeliest first. */
    List<StatePlace> statePlaces() {
        return statePlaces;
    }

    /** What shows a state by itself. */
    List<FoundCondition> conditions() {
        return conditions;
    }

    /** What is known of the printer, and which values may also belong to it. */
    UnclaimedValues unclaimed() {
        List<Source> signs =
                new ArrayList<>(conditions.stream().map(FoundCondition::source).toList());
        statePlaces.forEach(state -> signs.add(state.source()));
        return new UnclaimedValues(
                filled,
                bench.trails(),
                place,
                bench.trails().stream()
                        .filter(trail -> signs.contains(trail.source()))
                        .toList());
    }

    /** What determines the unit of temperatures. */
    Thermometer thermometer() {
        return thermometer;
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
        boolean proved = couple != Couple.COUNT && FollowEvidence.proves(one, other) && other.isSteady();
        boolean named = couple == Couple.COUNT || isCalledAHeater(one) || isCalledAHeater(other);
        if (!named && !FollowEvidence.follows(one, other)) {
            return;
        }
        double score = unnamed.weigh(couple, other)
                + (proved ? bench.foreign(one) + bench.foreign(other) : 0)
                + bench.of(one, couple.first()).score()
                + bench.of(other, couple.second()).score()
                + together.score();
        if (score >= LEAST_PAIR) {
            pairs.add(new Pair(couple, one, other, together, score));
        }
    }

    private static boolean isCalledAHeater(Trail trail) {
        return List.of(HeatedPart.values()).stream()
                .anyMatch(heater -> trail.names().speakOf(heater.concept()));
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

    /** Each value of a pair gets half of the evidence for the pair. */
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
                .sorted(Comparator.comparingLong((Pair pair) -> -Math.round(pair.score / ALIKE))
                        .thenComparing(pair -> pair.one.order())
                        .thenComparing(pair -> pair.other.order()))
                .toList();
    }

    private List<Single> placedSingles(List<Single> singles) {
        return singles.stream()
                .map(single -> new Single(
                        single.role, single.trail, single.judgement.with(place.weigh(single.trail, single.role))))
                .filter(single -> single.judgement.score() >= LEAST.get(single.role))
                .sorted(Comparator.comparingDouble((Single single) -> -single.judgement.score())
                        .thenComparing(single -> single.trail.order()))
                .toList();
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

    /** Heaters may belong to any machine if none is named as a heater and none is as hot as a nozzle. */
    private void takeBackWhatIsNoPrinters() {
        boolean printer = filled.containsKey(Role.NOZZLE_ACTUAL)
                || filled.values().stream().anyMatch(Assignment::isCalledAHeater);
        if (!printer) {
            List<Role> heaters = filled.keySet().stream()
                    .filter(role -> HeatedPart.of(role).isPresent())
                    .toList();
            heaters.forEach(role -> used.remove(filled.remove(role)));
            found.removeIf(one -> HeatedPart.of(one.role()).isPresent());
        }
    }

    /** A third temperature next to those of bed and nozzle, with the same name except for one part, is the chamber's. */
    private void giveChamber() {
        Trail bed = filled.get(Role.BED_ACTUAL);
        Trail nozzle = filled.get(Role.NOZZLE_ACTUAL);
        if (bed == null || nozzle == null || filled.containsKey(Role.CHAMBER_ACTUAL)) {
            return;
        }
        List<Trail> third = bench.trails().stream()
                .filter(trail -> !used.contains(trail) && isThird(trail, bed, nozzle))
                .toList();
        if (third.size() == 1) {
            Judgement judgement = bench.of(third.get(0), Role.CHAMBER_ACTUAL)
                    .with(new Clue(BESIDE, "is next to the temperatures of bed and nozzle"));
            give(Role.CHAMBER_ACTUAL, third.get(0), judgement);
            giveChamberTarget(third.get(0));
        }
    }

    /** A third target next to those of bed and nozzle, which the chamber approaches but may not have reached. */
    private void giveChamberTarget(Trail chamber) {
        Trail bed = filled.get(Role.BED_SETPOINT);
        Trail nozzle = filled.get(Role.NOZZLE_SETPOINT);
        if (bed == null || nozzle == null) {
            return;
        }
        List<Trail> third = bench.trails().stream()
                .filter(trail -> !used.contains(trail)
                        && trail.names().differFrom(bed.names()) == 1
                        && trail.names().differFrom(nozzle.names()) == 1
                        && bench.of(trail, Role.CHAMBER_SETPOINT).score() > HOPELESS
                        && FollowEvidence.follows(chamber, trail))
                .toList();
        if (third.size() == 1) {
            Judgement judgement = bench.of(third.get(0), Role.CHAMBER_SETPOINT)
                    .with(new Clue(BESIDE, "is next to the targets of bed and nozzle, and the chamber goes to it"));
            give(Role.CHAMBER_SETPOINT, third.get(0), judgement);
        }
    }

    private boolean isThird(Trail trail, Trail bed, Trail nozzle) {
        boolean plain = trail.numeric()
                && !trail.whole()
                && !trail.names().ownSpeaksOf(Concept.FOREIGN)
                && bench.of(trail, Role.CHAMBER_ACTUAL).score() > 0;
        return plain
                && trail.names().differFrom(bed.names()) == 1
                && trail.names().differFrom(nozzle.names()) == 1
                && !bed.names().levels().equals(nozzle.names().levels());
    }

    /** Values without a telling name that grow as only a job does. */
    private void giveUnnamedJob() {
        if (!filled.containsKey(Role.NOZZLE_SETPOINT)) {
            return;
        }
        JobGrowth growth = new JobGrowth(
                filled,
                bench.trails().stream()
                        .filter(trail -> !used.contains(trail)
                                && place.weigh(trail, Role.PROGRESS).weight() > ELSEWHERE)
                        .toList());
        Optional<JobGrowth.Count> count =
                filled.containsKey(Role.DONE) || filled.containsKey(Role.TOTAL) ? Optional.empty() : growth.count();
        count.ifPresent(one -> {
            Judgement judgement = Judgement.OPEN.with(
                    new Clue(LEAST.get(Role.DONE), "begins when the heaters are hot, and goes up step by step"));
            give(Role.DONE, one.done(), judgement);
            give(
                    Role.TOTAL,
                    one.total(),
                    Judgement.OPEN.with(
                            new Clue(LEAST.get(Role.DONE), "is next to the count, and stays while that goes up")));
        });
        growth.share(count).filter(trail -> !filled.containsKey(Role.PROGRESS)).ifPresent(trail -> {
            doubts.put(
                    trail,
                    "nothing but its course speaks for it: it is the only number that begins when the heaters are hot and then only rises");
            give(
                    Role.PROGRESS,
                    trail,
                    Judgement.OPEN.with(
                            new Clue(LEAST.get(Role.PROGRESS), "begins when the heaters are hot, and only rises")));
        });
    }

    private Judgement judgedAsState(Trail trail) {
        return bench.of(trail, Role.STATE).with(place.weigh(trail, Role.STATE));
    }

    private void giveState(StateSearch.Candidate best) {
        Map<String, PrinterState> meanings = new LinkedHashMap<>();
        best.said().forEach(said -> said.state().ifPresent(state -> meanings.put(said.word(), state)));
        give(Role.STATE, best.trail(), best.judgement(), meanings);
    }

    private void give(Single single) {
        boolean free = !filled.containsKey(single.role) && !used.contains(single.trail);
        if (free && !(single.role == Role.ELAPSED && runsAtRest(single.trail))) {
            give(single.role, single.trail, single.judgement);
        }
    }

    /** A value that rises from far above 0 while all heaters are off counts messages, or the time since the printer was switched on. */
    private boolean runsAtRest(Trail trail) {
        HeardHeat heat = new HeardHeat(filled);
        double begin = trail.firstSecond();
        double later = begin + REST_S;
        boolean rests = heat.at(begin) == HeardHeat.Stand.OFF && heat.at(later) == HeardHeat.Stand.OFF;
        return rests
                && trail.series().at(begin) > REST_S
                && trail.series().at(later) > trail.series().at(begin);
    }

    private void give(Role role, Trail trail, Judgement judgement) {
        give(role, trail, judgement, Map.of());
    }

    private void give(Role role, Trail trail, Judgement judgement, Map<String, PrinterState> meanings) {
        filled.put(role, trail);
        used.add(trail);
        Optional<HeatedPart> heater = HeatedPart.of(role);
        Optional<Gauge> shared = role == Role.PROGRESS ? ShareScale.of(trail, filled) : Optional.empty();
        Gauge gauge = shared.orElseGet(() -> heater.isPresent() ? thermometer.gauge(trail) : UnitGuess.of(trail, role));
        List<String> doubt = new ArrayList<>();
        if (shared.isEmpty()) {
            (heater.isPresent() ? thermometer.doubt(trail) : UnitGuess.doubt(trail, role)).ifPresent(doubt::add);
        }
        Optional.ofNullable(doubts.get(trail)).ifPresent(doubt::add);
        found.add(new Found(
                role,
                trail.source(),
                gauge.unit(),
                gauge.scale(),
                role == Role.STATE ? trail.said().texts() : trail.words(),
                meanings,
                doubt,
                judgement.score(),
                judgement.reasons()));
    }
}
