package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Heaters without telling names, identified by how hot they are set. One that is set hotter than any bed is a nozzle; of the others, the
 * hottest is the bed, and the next the chamber.
 */
final class UnnamedHeaters {
    private static final double WEIGHT = 1.5;
    private static final int MOST = 60;
    private static final double HOTTER_THAN_BEDS_C = HeatedPart.BED.mostC();

    private final Map<Trail, HeatedPart> byTarget = new HashMap<>();

    /**
     * Searches.
     *
     * @param trails all values
     * @param thermometer what tells the unit of temperatures
     */
    UnnamedHeaters(List<Trail> trails, Thermometer thermometer) {
        List<Trail> numbers = trails.stream()
                .filter(trail ->
                        trail.numeric() && trail.least() >= 0 && isNamed(trail).isEmpty())
                .sorted(Comparator.comparing(Trail::order))
                .toList();
        List<Trail> targets = new ArrayList<>(numbers.stream()
                .filter(Trail::isLikeATarget)
                .limit(MOST)
                .filter(target ->
                        numbers.stream().anyMatch(actual -> actual != target && FollowEvidence.proves(actual, target)))
                .toList());
        targets.sort(
                Comparator.comparingDouble((Trail target) -> -target.most()).thenComparing(Trail::order));
        List<HeatedPart> cooler = new ArrayList<>(List.of(HeatedPart.BED, HeatedPart.CHAMBER));
        cooler.removeIf(heater -> trails.stream()
                .anyMatch(trail -> isNamed(trail).filter(heater::equals).isPresent()));
        for (Trail target : targets) {
            boolean hot = thermometer.gauge(target).toOwn(target.most()) > HOTTER_THAN_BEDS_C;
            if (hot || !cooler.isEmpty()) {
                byTarget.put(target, hot ? HeatedPart.NOZZLE : cooler.remove(0));
            }
        }
    }

    private static Optional<HeatedPart> isNamed(Trail trail) {
        return List.of(HeatedPart.values()).stream()
                .filter(heater -> trail.numeric() && trail.names().speakOf(heater.concept()))
                .findFirst();
    }

    /** The evidence for the heater whose target this is. */
    double weigh(Couple couple, Trail target) {
        HeatedPart heater = byTarget.get(target);
        if (heater == null || couple == Couple.COUNT) {
            return 0;
        }
        return HeatedPart.of(couple.second()).filter(heater::equals).isPresent() ? WEIGHT : -WEIGHT;
    }
}
