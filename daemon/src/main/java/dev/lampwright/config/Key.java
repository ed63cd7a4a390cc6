package dev.lampwright.config;

import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * One key of the file, described once: reading, the defaults that {@code check} prints, the example file and the users' reference follow
 * from it. Immutable; each method that adds something gives a new one.
 *
 * @param name as written in the file
 * @param type what its value may be, in words: {@code whole number, 1 to 240}
 * @param shape the same for programs
 * @param reader reads the value, and records what is wrong with it; empty if left out or wrong
 * @param usual the default; empty if there is none, or if it depends on other keys
 * @param without what applies if it is left out, in words
 * @param reported whether {@code check} reports the default
 * @param goesWith what the key goes with, if it does not apply in every table of its kind; empty if it does
 * @param example a value as TOML; empty if the example file does not have the key
 * @param shown whether the example file has the key as an active line rather than as a comment
 * @param help what it is, in one line
 * @param <T> the type of the value
 */
record Key<T>(
        String name,
        String type,
        KeyShape shape,
        BiFunction<Table, String, Optional<T>> reader,
        Optional<T> usual,
        String without,
        boolean reported,
        String goesWith,
        String example,
        boolean shown,
        String help) {

    private static <T> Key<T> of(
            String name, String type, KeyShape shape, BiFunction<Table, String, Optional<T>> reader) {
        return new Key<>(name, type, shape, reader, Optional.empty(), "", false, "", "", false, "");
    }

    /** A whole number within bounds. */
    static Key<Integer> whole(String name, int least, int most) {
        return of(name, "whole number, " + least + " to " + most, KeyShape.whole(least, most), (table, key) -> {
            var number = table.wholeIfThere(key, least, most);
            return number.isPresent() ? Optional.of(number.getAsInt()) : Optional.empty();
        });
    }

    /** A number within bounds. */
    static Key<Double> number(String name, double least, double most) {
        String type = "number, " + Wording.number(least) + " to " + Wording.number(most);
        return of(name, type, KeyShape.number(least, most), (table, key) -> {
            var number = table.numberIfThere(key, least, most);
            return number.isPresent() ? Optional.of(number.getAsDouble()) : Optional.empty();
        });
    }

    /** Yes or no. */
    static Key<Boolean> flag(String name) {
        return of(name, "`true` or `false`", KeyShape.of("flag"), Table::flag);
    }

    /** One word of a few. */
    static <T> Key<T> word(String name, Map<String, T> words) {
        String type = '`' + String.join("`, `", words.keySet()) + '`';
        return of(name, type, KeyShape.word(words.keySet()), (table, key) -> table.oneOf(key, words));
    }

    /** A constant of an enum, by its name in lower case. */
    static <E extends Enum<E>> Key<E> word(String name, Class<E> constants) {
        return word(name, Words.of(constants.getEnumConstants(), Words::lowerCase));
    }

    /** A text that is not empty. */
    static Key<String> text(String name, String type, String wanted) {
        return of(name, type, KeyShape.of("text"), (table, key) -> table.text(key, wanted));
    }

    /** A text that is parsed; if the parser throws an {@code IllegalArgumentException}, its message is reported. */
    static <T> Key<T> parsed(String name, String type, String wanted, Function<String, T> parser) {
        return of(name, type, KeyShape.of("text"), (table, key) -> table.parsed(key, wanted, parser));
    }

    /** A key that its section reads by itself, because its value depends on others. */
    static Key<Void> own(String name, String type) {
        return of(name, type, KeyShape.of("text"), (table, key) -> Optional.empty());
    }

    /** With a word for programs on what its value is: {@code colour}, {@code signal}. */
    Key<T> of(String kind) {
        return new Key<>(
                name, type, KeyShape.of(kind), reader, usual, without, reported, goesWith, example, shown, help);
    }

    /** With a default that {@code check} reports. */
    Key<T> usual(T value, String written) {
        return new Key<>(name, type, shape, reader, Optional.of(value), written, true, goesWith, example, shown, help);
    }

    /** With a default that is not reported. */
    Key<T> otherwise(T value, String words) {
        return new Key<>(name, type, shape, reader, Optional.of(value), words, false, goesWith, example, shown, help);
    }

    /** With a description of what applies without it. */
    Key<T> without(String words) {
        return new Key<>(name, type, shape, reader, usual, words, reported, goesWith, example, shown, help);
    }

    /** With a note that it is required. */
    Key<T> needed() {
        return without("required");
    }

    /** With the only other keys or values that it can be used with. */
    Key<T> with(String others) {
        return new Key<>(name, type, shape, reader, usual, without, reported, others, example, shown, help);
    }

    /** With a line of the example file. */
    Key<T> example(String toml, String line) {
        return new Key<>(name, type, shape, reader, usual, without, reported, goesWith, toml, true, line);
    }

    /** With a line of the example file that is a comment there. */
    Key<T> comment(String toml, String line) {
        return new Key<>(name, type, shape, reader, usual, without, reported, goesWith, toml, false, line);
    }
}
