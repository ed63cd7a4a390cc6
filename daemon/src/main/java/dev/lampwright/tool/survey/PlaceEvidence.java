package dev.lampwright.tool.survey;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Where a value is among all that is heard. A printer's values share the beginning of their topics, so the beginning under which most roles
 * are filled best is taken as the printer's; what is elsewhere more likely belongs to something else. Where topics begin with the kind of
 * value, as in {@code heat/alder} and {@code job/alder}, the second level names the printer.
 */
final class PlaceEvidence implements Evidence {
    private static final double ELSEWHERE = 4;
    private static final double NAMED_ALIKE = 1;
    private static final double ENOUGH = 0.92;
    private static final double ENOUGH_OF_ALL = 0.6;
    private static final double WORTH = 2;

    private final Map<String, Map<Role, Double>> best = new HashMap<>();
    private String root = "";

    /**
     * Adds the score of a value in a role. Call before the first weighing.
     *
     * @param trail the value
     * @param role the role
     * @param score the evidence for it
     */
    void add(Trail trail, Role role, double score) {
        if (score >= WORTH) {
            beginnings(trail)
                    .forEach(beginning -> best.computeIfAbsent(beginning, any -> new EnumMap<>(Role.class))
                            .merge(role, score, Math::max));
        }
    }

    private static List<String> beginnings(Trail trail) {
        String topic = trail.speaker();
        return IntStream.rangeClosed(0, topic.length())
                .filter(i -> i == 0 || i == topic.length() || topic.charAt(i) == '/')
                .mapToObj(i -> topic.substring(0, i))
                .distinct()
                .toList();
    }

    /** Finds the printer's place; call once everything has been added. */
    void settle() {
        double all = sum(best.getOrDefault("", Map.of()));
        double most = best.entrySet().stream()
                .filter(entry -> !entry.getKey().isEmpty())
                .mapToDouble(entry -> sum(entry.getValue()))
                .max()
                .orElse(0);
        root = most < ENOUGH_OF_ALL * all ? "" : longestWith(ENOUGH * most);
    }

    private String longestWith(double least) {
        return best.entrySet().stream()
                .filter(entry -> sum(entry.getValue()) >= least)
                .map(Map.Entry::getKey)
                .max(Comparator.comparingInt(String::length).thenComparing(beginning -> beginning))
                .orElse("");
    }

    private static double sum(Map<Role, Double> scores) {
        return scores.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    /** Whether the printer has its own place. */
    boolean isKnown() {
        return !root.isEmpty();
    }

    @Override
    public Clue weigh(Trail trail, Role role) {
        String topic = trail.speaker();
        boolean within = root.isEmpty() || topic.equals(root) || topic.startsWith(root + "/");
        if (within) {
            return Clue.NONE;
        }
        return Clue.against(isNamedAlike(topic) || isBeside(topic) ? NAMED_ALIKE : ELSEWHERE);
    }

    /** On a topic next to the printer's own, below a level that only they share, unless another one heats there. */
    private boolean isBeside(String topic) {
        int end = root.lastIndexOf('/');
        boolean deep = end > 0 && root.lastIndexOf('/', end - 1) > 0;
        Map<Role, Double> there = best.getOrDefault(topic, Map.of());
        return deep
                && topic.startsWith(root.substring(0, end + 1))
                && there.keySet().stream().noneMatch(role -> HeatedPart.of(role).isPresent());
    }

    private boolean isNamedAlike(String topic) {
        String[] own = root.split("/", -1);
        String[] other = topic.split("/", -1);
        return own.length > 1 && other.length > 1 && !own[0].equals(other[0]) && own[1].equals(other[1]);
    }
}
