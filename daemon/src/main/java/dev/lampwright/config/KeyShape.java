package dev.lampwright.config;

import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the value of a key may be, for programs that let people choose it.
 *
 * @param kind {@code number}, {@code whole}, {@code flag}, {@code word} or {@code text}, or what the text or the table is: {@code colour}
 * @param low least number that it may be; empty if it is none
 * @param high most that it may be; empty if it is none
 * @param choices the words that it may be; empty unless it is one of a few
 */
record KeyShape(String kind, OptionalDouble low, OptionalDouble high, List<String> choices) {
    /** Keeps a copy of the list. */
    KeyShape {
        choices = List.copyOf(choices);
    }

    /** One without bounds. */
    static KeyShape of(String kind) {
        return new KeyShape(kind, OptionalDouble.empty(), OptionalDouble.empty(), List.of());
    }

    /** A number. */
    static KeyShape number(double least, double most) {
        return new KeyShape("number", OptionalDouble.of(least), OptionalDouble.of(most), List.of());
    }

    /** A whole number. */
    static KeyShape whole(int least, int most) {
        return new KeyShape("whole", OptionalDouble.of(least), OptionalDouble.of(most), List.of());
    }

    /** One of a few words. */
    static KeyShape word(Collection<String> words) {
        return new KeyShape("word", OptionalDouble.empty(), OptionalDouble.empty(), List.copyOf(words));
    }
}
