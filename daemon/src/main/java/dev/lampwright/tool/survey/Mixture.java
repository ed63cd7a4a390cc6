package dev.lampwright.tool.survey;

import dev.lampwright.payload.Speakers;
import java.util.Collection;
import java.util.List;

/**
 * A topic on which several machines publish in turn.
 *
 * @param topic the topic
 * @param place the place in a message that says who publishes
 * @param values the machines that publish there
 * @param bound those of them that are bound separately; none if the binding mixes them
 */
public record Mixture(String topic, String place, List<String> values, List<String> bound) {
    private static final int MOST_SPEAKERS = 16;
    private static final int LEAST_TURNS = 3;
    private static final double LEAST_SHARE = 0.05;

    /** Keeps a copy of the list. */
    public Mixture {
        values = List.copyOf(values);
        bound = List.copyOf(bound);
    }

    /**
     * A topic whose publishers could be separated.
     *
     * @param topic the topic
     * @param turns who publishes there
     * @param found what was found
     */
    static Mixture apart(String topic, Speakers.Turns turns, List<Found> found) {
        List<String> bound = found.stream()
                .filter(one -> one.source().topicFilter().equals(topic))
                .flatMap(one -> one.source().part().stream())
                .flatMap(part -> part.where().values().stream())
                .distinct()
                .sorted()
                .toList();
        return new Mixture(topic, turns.field().pointer(), turns.values(), bound);
    }

    /**
     * Looks for topics on which several publish.
     *
     * @param found what was found
     * @param trails all values
     * @return those of them on which something was found, each once
     */
    static List<Mixture> among(List<Found> found, Collection<Trail> trails) {
        return trails.stream()
                .filter(trail -> saysWho(trail) && changesAgainAndAgain(trail))
                .filter(trail -> found.stream().anyMatch(one -> isAbout(trail, one)))
                .map(trail -> new Mixture(trail.source().topicFilter(), trail.place(), speakers(trail), List.of()))
                .toList();
    }

    private static boolean saysWho(Trail trail) {
        ValueName names = trail.names();
        return names.depthOf(Concept.SENDER) == names.levels().size() - 1
                && names.levels().size() > names.topicLevels();
    }

    /** Each publishes several times, and not in one block after the other. */
    private static boolean changesAgainAndAgain(Trail trail) {
        double speakers = trail.numeric()
                ? trail.most() - trail.least() + 1
                : trail.words().size();
        return speakers > 1
                && (trail.whole() || !trail.numeric())
                && speakers <= MOST_SPEAKERS
                && trail.changes() >= LEAST_TURNS * speakers
                && trail.changes() >= LEAST_SHARE * trail.count();
    }

    /** Whether it is in the same message, next to or above what was found. */
    private static boolean isAbout(Trail trail, Found found) {
        String pointer = trail.source().path().pointer();
        String within = pointer.substring(0, pointer.lastIndexOf('/') + 1);
        return !trail.source().path().bare()
                && !trail.source().equals(found.source())
                && found.source().topicFilter().equals(trail.source().topicFilter())
                && found.source().path().pointer().startsWith(within);
    }

    /** For numbers, the smallest and the largest. */
    private static List<String> speakers(Trail trail) {
        return trail.numeric()
                ? List.of(NumberText.number(trail.least()), NumberText.number(trail.most()))
                : trail.words();
    }

    /** A line for the user. */
    String told() {
        if (!bound.isEmpty()) {
            return topic + ": several printers or heaters take turns there, told apart by " + place + ": "
                    + NumberText.words(values) + "; the file reads only " + NumberText.words(bound);
        }
        return topic + ": several printers or heaters take turns there, told apart by " + place + ": "
                + NumberText.words(values) + ". What is bound there mixes them; give each a topic of its own";
    }
}
