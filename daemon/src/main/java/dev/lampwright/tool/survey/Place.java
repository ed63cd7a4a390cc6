package dev.lampwright.tool.survey;

import dev.lampwright.broker.TopicFilter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where one printer reports: the levels with which its topics begin, such as {@code shop/alder}; the first may be any, as in
 * {@code +/alder}.
 *
 * @param levels at least one
 */
record Place(List<String> levels) {
    private static final String ANY = "+";

    /** Keeps a copy of the list. */
    Place {
        levels = List.copyOf(levels);
    }

    /**
     * The place of what was found.
     *
     * @param found values of one printer
     * @return nothing if its readings and its state share no beginning
     */
    static Optional<Place> of(List<Found> found) {
        List<List<String>> topics = found.stream()
                .filter(one -> one.role().quantity().isPresent() || one.role() == Role.STATE)
                .map(one -> List.of(one.source().topicFilter().split("/", -1)))
                .toList();
        List<String> shared = shared(topics, 0);
        if (!shared.isEmpty()) {
            return Optional.of(new Place(shared));
        }
        List<String> after = new ArrayList<>(shared(topics, 1));
        return after.isEmpty() ? Optional.empty() : Optional.of(new Place(after).below(ANY));
    }

    private static List<String> shared(List<List<String>> topics, int from) {
        int most = topics.stream().mapToInt(List::size).min().orElse(0);
        int to = from;
        while (to < most && isShared(topics, to)) {
            to++;
        }
        return to == from ? List.of() : topics.get(0).subList(from, to);
    }

    private static boolean isShared(List<List<String>> topics, int level) {
        return topics.stream().map(topic -> topic.get(level)).distinct().count() == 1;
    }

    private Place below(String first) {
        List<String> all = new ArrayList<>(levels);
        all.add(0, first);
        return new Place(all);
    }

    /**
     * As much of this as distinguishes it from another place, if both begin alike: of {@code shop/alder/heat} next
     * to {@code shop/birch/heat} it is {@code shop/alder}.
     *
     * @param other a place that is not within this
     * @return this, or a shorter one
     */
    Place beside(Place other) {
        int alike = 0;
        while (alike < levels.size()
                && alike < other.levels.size()
                && levels.get(alike).equals(other.levels.get(alike))) {
            alike++;
        }
        return alike == 0 ? this : new Place(levels.subList(0, Math.min(levels.size(), alike + 1)));
    }

    /** Whether messages with a topic come from here. */
    boolean holds(String topic) {
        return TopicFilter.of(filter()).matches(topic);
    }

    /** The topic filter for all of it. */
    String filter() {
        return String.join("/", levels) + "/#";
    }
}
