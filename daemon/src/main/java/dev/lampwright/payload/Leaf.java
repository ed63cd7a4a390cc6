package dev.lampwright.payload;

import dev.lampwright.upkeep.Printable;
import java.util.List;
import java.util.Optional;

/**
 * One single value in a payload.
 *
 * @param path where it is in the payload
 * @param cuts what is extracted from the text there; none for the value itself
 * @param part which part of the payload the path is in; empty for all of it
 * @param names its names in the payload, from the outermost on: object keys, array positions, and preceding words
 * @param value the value there
 * @param number the value as a number, in {@code unit}, also if reported as text; a duration in s; NaN if it is not a number
 * @param unit the unit given with it; {@link Unit#OWN} if none is
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

    /** The same number in a unit that is given elsewhere. */
    Leaf in(Unit given) {
        return new Leaf(path, cuts, part, names, value, number, given);
    }

    /**
     * Where this is on a topic.
     *
     * @param topic the topic
     * @return the source for a binding
     */
    public Source on(String topic) {
        return new Source(topic, path, cuts, part);
    }

    /**
     * The value as text.
     *
     * @return its first 120 characters, made printable; null as in JSON
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
