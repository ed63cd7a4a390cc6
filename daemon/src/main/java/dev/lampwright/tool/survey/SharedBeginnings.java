package dev.lampwright.tool.survey;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Beginnings of topics that belong to a whole printer, such as a workshop's name. That a heater's word is in them says nothing: “table” in
 * {@code shop/table/row} is not the bed if all of the printer's heaters are below it.
 */
final class SharedBeginnings {
    private static final int HEATERS = 2;

    private final Collection<Trail> trails;
    private final Set<List<List<String>>> shared = new HashSet<>();
    private final Set<List<List<String>>> others = new HashSet<>();

    private SharedBeginnings(Collection<Trail> trails) {
        this.trails = List.copyOf(trails);
    }

    /**
     * Takes back what they say of heaters.
     *
     * @param trails all values
     */
    static void silence(Collection<Trail> trails) {
        SharedBeginnings beginnings = new SharedBeginnings(trails);
        trails.forEach(beginnings::silence);
    }

    private void silence(Trail trail) {
        ValueName names = trail.names();
        int outer = names.topicLevels();
        while (outer > 0 && !isShared(names.levels().subList(0, outer))) {
            outer--;
        }
        if (outer > 0) {
            trail.call(names.withoutHeaters(outer));
        }
    }

    private boolean isShared(List<List<String>> beginning) {
        if (!shared.contains(beginning) && !others.contains(beginning)) {
            (holdsAPrinter(beginning) ? shared : others).add(List.copyOf(beginning));
        }
        return shared.contains(beginning);
    }

    /** At least two targets, and a text that changes. */
    private boolean holdsAPrinter(List<List<String>> beginning) {
        List<Trail> within = trails.stream()
                .filter(trail -> begins(trail.names(), beginning))
                .toList();
        return within.stream().filter(Trail::isLikeATarget).count() >= HEATERS
                && within.stream().anyMatch(trail -> trail.words().size() > 1);
    }

    private static boolean begins(ValueName names, List<List<String>> beginning) {
        return names.topicLevels() >= beginning.size()
                && names.levels().subList(0, beginning.size()).equals(beginning);
    }
}
