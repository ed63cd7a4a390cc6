package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A printer whose readings are known, and the values around them that belong to no known reading. */
final class UnclaimedValues {
    /** Evidence from another printer's place counts less. */
    private static final double ELSEWHERE = -2;

    private final Map<Role, Trail> filled;
    private final List<Trail> free;
    private final List<List<String>> shared;

    /**
     * Searches.
     *
     * @param filled the value of each role that was found
     * @param trails all values
     * @param place where the printer is
     * @param taken values that are something else, such as a flag for a fault
     */
    UnclaimedValues(Map<Role, Trail> filled, Collection<Trail> trails, PlaceEvidence place, Collection<Trail> taken) {
        this.filled = filled.isEmpty() ? Map.of() : new EnumMap<>(filled);
        Set<Trail> used = new HashSet<>(filled.values());
        used.addAll(taken);
        Set<String> topics = new HashSet<>();
        filled.values().forEach(trail -> topics.add(trail.speaker()));
        free = trails.stream()
                .filter(trail -> trail.numeric() && !used.contains(trail))
                .filter(trail -> topics.contains(trail.speaker())
                        || (place.isKnown() && place.weigh(trail, Role.STATE).weight() > ELSEWHERE))
                .sorted(Comparator.comparing(Trail::order))
                .toList();
        shared = shared(filled.values());
    }

    private static List<List<String>> shared(Collection<Trail> trails) {
        List<List<String>> shared = new ArrayList<>();
        boolean first = true;
        for (Trail trail : trails) {
            List<List<String>> levels = trail.names().levels();
            shared = first ? new ArrayList<>(levels) : shared.subList(0, alike(shared, levels));
            first = false;
        }
        return List.copyOf(shared);
    }

    private static int alike(List<List<String>> one, List<List<String>> other) {
        int alike = 0;
        while (alike < Math.min(one.size(), other.size()) && one.get(alike).equals(other.get(alike))) {
            alike++;
        }
        return alike;
    }

    /** The numbers that may be the printer's, in an order that is always the same for the same messages. */
    List<Trail> free() {
        return free;
    }

    /** The value of a role; null if it was not found. */
    Trail filled(Role role) {
        return filled.get(role);
    }

    /** All values whose role is known. */
    Collection<Trail> filled() {
        return filled.values();
    }

    /**
     * From which level on the names of a value are its own, rather than names of where the printer is.
     *
     * @param trail the value
     * @return 0 or more
     */
    int ownFrom(Trail trail) {
        return alike(shared, trail.names().levels());
    }
}
