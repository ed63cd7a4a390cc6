package dev.lampwright.tool.survey;

import dev.lampwright.config.Nearest;
import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Heaters other than bed, nozzle and chamber, such as a second nozzle. A temperature and a target form one if the temperature approaches
 * the target and stays there, or if their names are those of a heater already found except for one part, which is the same in both.
 */
final class FurtherHeaters {
    /** The maximum that a configuration may have. */
    private static final int MOST = 8;

    private static final int MOST_TARGETS = 100;
    private static final int MOST_TEMPERATURES = 200;
    private static final double HOTTER_THAN_BEDS_C = HeatedPart.BED.mostC();
    private static final double COLDEST_C = 3;
    private static final double HOTTEST_C = 500;
    private static final double SAME_K = 0.6;
    private static final double MOSTLY_SAME = 0.95;

    private final UnclaimedValues around;
    private final Thermometer thermometer;
    private final Set<Trail> used = new HashSet<>();
    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<FoundOwn> found = new ArrayList<>();

    private record Pair(Trail actual, Trail target, boolean sibling, boolean proved) {
        int rank() {
            return (sibling ? 2 : 0) + (proved ? 1 : 0);
        }

        int apart() {
            return actual.names().differFrom(target.names());
        }
    }

    /**
     * Searches.
     *
     * @param around what is known, and which values are left
     * @param thermometer what determines the unit of temperatures
     */
    FurtherHeaters(UnclaimedValues around, Thermometer thermometer) {
        this.around = around;
        this.thermometer = thermometer;
        pairs().forEach(this::give);
    }

    /** Two for each heater, its temperature first. */
    List<FoundOwn> found() {
        return List.copyOf(found);
    }

    /** The values that report these heaters. */
    Set<Trail> used() {
        return Set.copyOf(used);
    }

    private List<Pair> pairs() {
        List<Trail> targets = around.free().stream()
                .filter(this::mayBeTarget)
                .limit(MOST_TARGETS)
                .toList();
        List<Trail> actuals = around.free().stream()
                .filter(this::mayBeTemperature)
                .limit(MOST_TEMPERATURES)
                .toList();
        List<Pair> pairs = new ArrayList<>();
        for (Trail target : targets) {
            for (Trail actual : actuals) {
                Pair pair = new Pair(
                        actual,
                        target,
                        isSibling(actual, target),
                        target.isLikeATarget() && FollowEvidence.proves(actual, target));
                if (actual != target && pair.rank() > 0 && (pair.sibling || !isRepeated(pair))) {
                    pairs.add(pair);
                }
            }
        }
        pairs.sort(Comparator.comparingInt((Pair pair) -> -pair.rank())
                .thenComparing(Pair::apart)
                .thenComparing(pair -> pair.actual.order())
                .thenComparing(pair -> pair.target.order()));
        return pairs;
    }

    private boolean mayBeTarget(Trail trail) {
        double most = thermometer.gauge(trail).toOwn(trail.most());
        return trail.least() >= 0
                && (trail.most() == 0 || most <= HOTTEST_C)
                && (trail.isLikeATarget() || trail.names().speakOf(Concept.TARGET));
    }

    private boolean mayBeTemperature(Trail trail) {
        Gauge gauge = thermometer.gauge(trail);
        boolean target = trail.names().depthOf(Concept.TARGET)
                > Math.max(0, trail.names().depthOf(Concept.ACTUAL));
        return !target && gauge.toOwn(trail.least()) >= COLDEST_C && gauge.toOwn(trail.most()) <= HOTTEST_C;
    }

    /** Whether both are named like those of a known heater, except for one part, which is the same in both and not another heater's. */
    private boolean isSibling(Trail actual, Trail target) {
        return List.of(HeatedPart.values()).stream()
                .filter(heater -> isCalled(actual, heater) && isCalled(target, heater))
                .anyMatch(heater -> isBeside(actual, around.filled(heater.actual()))
                        && isBeside(target, around.filled(heater.target()))
                        && differing(actual, around.filled(heater.actual()))
                                .equals(differing(target, around.filled(heater.target()))));
    }

    private static boolean isCalled(Trail trail, HeatedPart heater) {
        ValueName names = trail.names();
        return names.speakOf(heater.concept())
                && heater.others().stream()
                        .allMatch(other -> names.depthOf(other.concept()) < names.depthOf(heater.concept()));
    }

    private boolean isBeside(Trail trail, Trail known) {
        return known != null
                && trail.names().differFrom(known.names()) == 1
                && level(trail, known) >= around.ownFrom(known);
    }

    private static int level(Trail trail, Trail known) {
        List<List<String>> one = trail.names().levels();
        List<List<String>> other = known.names().levels();
        int level = 0;
        while (one.get(level).equals(other.get(level))) {
            level++;
        }
        return level;
    }

    /** The part of a value's name that the known one does not have. */
    private static List<String> differing(Trail trail, Trail known) {
        int level = level(trail, known);
        List<String> words = new ArrayList<>(trail.names().levels().get(level));
        known.names().levels().get(level).forEach(words::remove);
        return words;
    }

    /** Whether it is a known heater, reported a second time. */
    private boolean isRepeated(Pair pair) {
        return around.filled().stream().anyMatch(known -> isSame(pair.actual, known) || pair.target == known);
    }

    private static boolean isSame(Trail one, Trail other) {
        Series series = one.series();
        int both = 0;
        int same = 0;
        for (int i = 0; i < series.size(); i++) {
            double there = other.series().at(series.second(i));
            both += Double.isNaN(there) ? 0 : 1;
            same += Math.abs(there - series.value(i)) <= SAME_K ? 1 : 0;
        }
        return both > 0 && same >= MOSTLY_SAME * both;
    }

    private void give(Pair pair) {
        if (used.contains(pair.actual) || used.contains(pair.target) || found.size() >= 2 * MOST) {
            return;
        }
        used.add(pair.actual);
        used.add(pair.target);
        OwnHeater heater = new OwnHeater(numbered(name(pair)));
        String reason = pair.sibling
                ? "is called like the " + kind(pair).orElseThrow().concept().word() + " but for one name"
                : "the one comes to the other and stays";
        found.add(of(heater.actualKey(), pair.actual, reason));
        found.add(of(heater.setpointKey(), pair.target, reason));
    }

    private FoundOwn of(String key, Trail trail, String reason) {
        Gauge gauge = thermometer.gauge(trail);
        List<String> reasons = new ArrayList<>(List.of(reason));
        thermometer.doubt(trail).map(Remarks::doubt).ifPresent(reasons::add);
        String unit = gauge.unit() == Unit.OWN ? "" : gauge.unit().word();
        return new FoundOwn(key, trail.source(), unit, gauge.scale(), List.of(), true, reasons);
    }

    private static Optional<HeatedPart> kind(Pair pair) {
        return List.of(HeatedPart.values()).stream()
                .filter(heater -> isCalled(pair.actual, heater) || isCalled(pair.target, heater))
                .findFirst();
    }

    /** Named by its kind, by its highest target, or by its own name. */
    private String name(Pair pair) {
        if (kind(pair).isPresent()) {
            return kind(pair).get().concept().word();
        }
        if (thermometer.gauge(pair.target).toOwn(pair.target.most()) > HOTTER_THAN_BEDS_C) {
            return HeatedPart.NOZZLE.concept().word();
        }
        List<List<String>> levels = pair.actual.names().levels();
        List<List<String>> others = pair.target.names().levels();
        for (int i = Math.min(levels.size(), others.size()) - 1; i >= around.ownFrom(pair.actual); i--) {
            String called = String.join("_", levels.get(i));
            if (levels.get(i).equals(others.get(i)) && isName(called, levels.get(i))) {
                return called;
            }
        }
        return "heater";
    }

    private static boolean isName(String called, List<String> words) {
        List<String> known = List.of("bed", "nozzle", "chamber", "job");
        boolean telling = words.stream()
                .noneMatch(word -> Vocabulary.words(Concept.TEMPERATURE).contains(word)
                        || Vocabulary.words(Concept.ACTUAL).contains(word));
        return telling
                && called.matches("[a-z][a-z0-9_]{1,24}")
                && Nearest.to(called, known).isEmpty();
    }

    /** The first of a kind has the name of the kind, unless Lampwright already uses that name. */
    private String numbered(String name) {
        boolean known = List.of(HeatedPart.values()).stream()
                .anyMatch(heater -> heater.concept().word().equals(name));
        int number = numbers.merge(name, known ? 2 : 1, (before, first) -> before + 1);
        return number == 1 ? name : name + number;
    }
}
