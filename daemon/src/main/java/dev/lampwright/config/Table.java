package dev.lampwright.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * One table of the file, read by key. No method throws: what is wrong is noted, and a value within the asked range stands in for
 * it, so that the rest can be read and judged. A key is known once it has been asked for; {@link #noteUnknown} complains of the
 * others.
 */
final class Table {
    private final List<String> path;
    private final Map<?, ?> values;
    private final Findings findings;
    private final Map<String, Table> tables = new LinkedHashMap<>();
    private final Set<String> known = new LinkedHashSet<>();
    private boolean mistaken;

    private Table(List<String> path, Map<?, ?> values, Findings findings) {
        this.path = path;
        this.values = values;
        this.findings = findings;
    }

    /**
     * The outermost table.
     *
     * @param values what stands in it, as {@link Toml} gives it
     * @param findings where mistakes go
     * @return the table
     */
    static Table root(Map<String, Object> values, Findings findings) {
        return new Table(List.of(), values, findings);
    }

    /**
     * Whether a key is there.
     *
     * @param key its name
     * @return true also if its value is wrong
     */
    boolean has(String key) {
        known.add(key);
        return values.containsKey(key);
    }

    /**
     * The keys that are there.
     *
     * @return their names, in the order of the file
     */
    List<String> keys() {
        return values.keySet().stream().map(String::valueOf).toList();
    }

    /**
     * Whether nothing wrong has been found here so far, nor in the tables within.
     *
     * @return false once a mistake has been noted
     */
    boolean right() {
        return !mistaken && tables.values().stream().allMatch(Table::right);
    }

    /**
     * A table within this one.
     *
     * @param key its name
     * @return the table; an empty one if it is not there
     */
    Table table(String key) {
        return tables.computeIfAbsent(key, this::newTable);
    }

    /**
     * A text that may be left out.
     *
     * @param key its name
     * @param wanted what would be right, for the complaint
     * @return the text, which is not empty; nothing if it is left out or wrong
     */
    Optional<String> text(String key, String wanted) {
        Optional<String> text = textOrEmpty(key, wanted);
        if (text.isPresent() && text.get().isEmpty()) {
            mistake(key, "is empty", wanted);
            return Optional.empty();
        }
        return text;
    }

    /**
     * A text that may be left out, and may be empty.
     *
     * @param key its name
     * @param wanted what would be right, for the complaint
     * @return the text; nothing if it is left out or wrong
     */
    Optional<String> textOrEmpty(String key, String wanted) {
        if (!has(key)) {
            return Optional.empty();
        }
        if (values.get(key) instanceof String text) {
            return Optional.of(text);
        }
        mistake(key, isValue(key) + ", not text", wanted);
        return Optional.empty();
    }

    /**
     * A text that must be there.
     *
     * @param key its name
     * @param wanted what would be right, for the complaint
     * @return the text; nothing if it is missing or wrong
     */
    Optional<String> needText(String key, String wanted) {
        noteIfMissing(key, wanted);
        return text(key, wanted);
    }

    /**
     * Texts in an array, which may be left out.
     *
     * @param key its name
     * @param wanted what would be right, for the complaint
     * @return the texts, none of them empty; none at all if the array is left out or wrong
     */
    List<String> texts(String key, String wanted) {
        if (!has(key)) {
            return List.of();
        }
        List<String> texts = new ArrayList<>();
        if (values.get(key) instanceof List<?> elements && !elements.isEmpty()) {
            for (Object element : elements) {
                if (element instanceof String text && !text.isEmpty()) {
                    texts.add(text);
                } else {
                    mistake(key, "has " + Shown.value(element) + " in it", wanted);
                }
            }
        } else {
            mistake(key, values.get(key) instanceof List ? "is empty" : isValue(key), wanted);
        }
        return texts;
    }

    /**
     * A whole number that may be left out.
     *
     * @param key its name
     * @param least least that it may be
     * @param most most that it may be
     * @param otherwise what to take if it is left out
     * @return the number
     */
    int whole(String key, int least, int most, int otherwise) {
        return wholeIfThere(key, least, most).orElseGet(() -> defaultOf(key, otherwise, Integer.toString(otherwise)));
    }

    /**
     * A whole number that must be there.
     *
     * @param key its name
     * @param least least that it may be
     * @param most most that it may be
     * @return the number; {@code most} if it is missing or wrong
     */
    int needWhole(String key, int least, int most) {
        noteIfMissing(key, wantedWhole(least, most));
        return wholeIfThere(key, least, most).orElse(most);
    }

    /**
     * A whole number that may be left out.
     *
     * @param key its name
     * @param least least that it may be
     * @param most most that it may be
     * @return the number; nothing if it is left out or wrong
     */
    OptionalInt wholeIfThere(String key, int least, int most) {
        if (!has(key)) {
            return OptionalInt.empty();
        }
        if (values.get(key) instanceof Integer number && number >= least && number <= most) {
            return OptionalInt.of(number);
        }
        mistake(key, isValue(key), wantedWhole(least, most));
        return OptionalInt.empty();
    }

    /**
     * A number that may be left out.
     *
     * @param key its name
     * @param least least that it may be
     * @param most most that it may be
     * @param otherwise what to take if it is left out
     * @return the number
     */
    double number(String key, double least, double most, double otherwise) {
        OptionalDouble number = numberIfThere(key, least, most);
        return number.isPresent() ? number.getAsDouble() : defaultOf(key, otherwise, Shown.number(otherwise));
    }

    /**
     * A number that must be there.
     *
     * @param key its name
     * @param least least that it may be
     * @param most most that it may be
     * @return the number; {@code most} if it is missing or wrong
     */
    double needNumber(String key, double least, double most) {
        noteIfMissing(key, wantedNumber(least, most));
        return numberIfThere(key, least, most).orElse(most);
    }

    /**
     * A number that may be left out.
     *
     * @param key its name
     * @param least least that it may be
     * @param most most that it may be
     * @return the number, which is finite; nothing if it is left out or wrong
     */
    OptionalDouble numberIfThere(String key, double least, double most) {
        return has(key) ? inRange(key, values.get(key), least, most) : OptionalDouble.empty();
    }

    /**
     * A number, or several in an array. They may be left out.
     *
     * @param key name of the number or the array
     * @param least least that each may be
     * @param most most that each may be
     * @param otherwise what to take if it is left out
     * @return the numbers, one if it is no array
     */
    List<Double> numbers(String key, double least, double most, double otherwise) {
        if (!(values.get(key) instanceof List<?> elements)) {
            return List.of(number(key, least, most, otherwise));
        }
        known.add(key);
        List<Double> numbers = new ArrayList<>();
        for (Object element : elements) {
            numbers.add(inRange(key, element, least, most).orElse(most));
        }
        return numbers;
    }

    /**
     * One of a few words: the names of an enum's constants in lower case. It may be left out.
     *
     * @param key its name
     * @param otherwise what to take if it is left out
     * @param <E> the enum
     * @return what the word stands for
     */
    <E extends Enum<E>> E choice(String key, E otherwise) {
        Map<String, E> choices = new LinkedHashMap<>();
        for (E constant : otherwise.getDeclaringClass().getEnumConstants()) {
            choices.put(constant.name().toLowerCase(Locale.ROOT), constant);
        }
        String wanted = "give one of \"" + String.join("\", \"", choices.keySet()) + '"';
        if (!has(key)) {
            return defaultOf(key, otherwise, otherwise.name().toLowerCase(Locale.ROOT));
        }
        Optional<String> word = text(key, wanted);
        if (word.isPresent() && !choices.containsKey(word.get())) {
            mistake(key, isValue(key), wanted);
        }
        return word.map(choices::get).orElse(otherwise);
    }

    /**
     * Notes a mistake at a key of this table.
     *
     * @param key its name, whether it is there or not
     * @param what what is wrong, to follow the key
     * @param whatWouldBeRight what to do
     */
    void mistake(String key, String what, String whatWouldBeRight) {
        mistaken = true;
        findings.mistake(pathOf(key), what, whatWouldBeRight);
    }

    /**
     * Notes that a default was taken.
     *
     * @param key name of the key that was left out
     * @param value what was taken
     * @param shown the value as it would stand in the file
     * @param <T> what the value is
     * @return the value
     */
    <T> T defaultOf(String key, T value, String shown) {
        findings.tookDefault(pathOf(key), shown);
        return value;
    }

    /**
     * Takes the defaults that were noted here and in the tables within out of what is told of the file.
     *
     * @return values by dotted key, in the order in which they were asked for
     */
    Map<String, String> takeDefaults() {
        return findings.takeDefaults(path);
    }

    /** Complains of every key, here and in the tables within, that nobody has asked for. To be called once all is read. */
    void noteUnknown() {
        keys().stream().filter(key -> !known.contains(key)).forEach(this::noteUnknown);
        tables.values().forEach(Table::noteUnknown);
    }

    private void noteUnknown(String key) {
        String all = "remove it; what may stand here: " + String.join(", ", known);
        String right = Nearest.to(key, known)
                .map(near -> "did you mean " + Shown.key(List.of(near)) + "?")
                .orElse(all);
        mistake(key, "is not known", key.contains(".") ? "write it without the quotes" : right);
    }

    private Table newTable(String key) {
        boolean there = has(key);
        if (there && values.get(key) instanceof Map<?, ?> inner) {
            return new Table(pathOf(key), inner, findings);
        }
        if (there) {
            mistake(key, isValue(key), "give a table: [" + Shown.key(pathOf(key)) + "] with its keys below");
        }
        return new Table(pathOf(key), Map.of(), there ? findings.unheard() : findings);
    }

    private OptionalDouble inRange(String key, Object value, double least, double most) {
        double number = value instanceof Number n ? n.doubleValue() : Double.NaN;
        if (number >= least && number <= most) {
            return OptionalDouble.of(number);
        }
        mistake(key, "is " + Shown.value(value), wantedNumber(least, most));
        return OptionalDouble.empty();
    }

    private void noteIfMissing(String key, String wanted) {
        if (!has(key)) {
            mistake(key, "is missing", wanted);
        }
    }

    private String isValue(String key) {
        return "is " + Shown.value(values.get(key));
    }

    private static String wantedWhole(int least, int most) {
        return "give a whole number from " + least + " to " + most;
    }

    private static String wantedNumber(double least, double most) {
        return "give a number from " + Shown.number(least) + " to " + Shown.number(most);
    }

    private List<String> pathOf(String key) {
        List<String> inner = new ArrayList<>(path);
        inner.add(key);
        return List.copyOf(inner);
    }
}
