package dev.lampwright.payload;

import dev.lampwright.upkeep.Printable;
import java.util.List;
import java.util.Optional;

/**
 * One single value in a payload.
 *
 * @param path where in the payload it stands
 * @param cuts what is cut out of the text there; none if the value itself is meant
 * @param part which part of the payload the path is in; empty for all of it
 * @param names what it is called by its payload, from the outermost on: object keys, array places, and words that stand before it
 * @param value what stands there
 * @param number the value as a number, in {@code unit}, also if it is told as text; a duration in s; NaN if it is none
 * @param unit the unit that stands with it; {@link Unit#OWN} if none does
 */
public record Leaf(
        PayloadPath path,
        List<Cut> cuts,
        Optional<Selection> part,
        List<String> names,
        Value value,
        double number,
        Unit unit) {
    private static final int MOST_SHOWN_CHARS = 120;

    /** Keeps copies of the lists. */
    public Leaf {
        cuts = List.copyOf(cuts);
        names = List.copyOf(names);
    }

    /**
     * Where this stands on a topic.
     *
     * @param topic the topic
     * @return where a binding finds it
     */
    public Source on(String topic) {
        return new Source(topic, path, cuts, part);
    }

    /**
     * The value as text.
     *
     * @return its first 120 characters, made printable; null is written as in JSON
     */
    public String text() {
        return Printable.beginning(value.word().orElse(""), MOST_SHOWN_CHARS);
    }

    /**
     * Whether it is a number, or a number with its unit, or a duration.
     *
     * @return false for any other text, true, false and null
     */
    public boolean numeric() {
        return !Double.isNaN(number);
    }
}
