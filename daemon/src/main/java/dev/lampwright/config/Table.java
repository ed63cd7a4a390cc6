package dev.lampwright.config;

import dev.lampwright.signal.Signal;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * One table of the file, read by key. No method throws: mistakes are recorded, and a value within the valid range replaces a wrong one, so
 * that the rest can be read and checked. A key counts as used once it has been read; {@link #noteUnknown} reports the others. Keys that no
 * {@link Section} describes cannot be read.
 */
final class Table {
    private static final String WANTED_TIME = "give a local time, for instance \"22:30\"";
    private final List<String> path;
    private final Map<?, ?> values;
    private final Mistakes findings;
    private final Map<String, Table> tables = new LinkedHashMap<>();
    private final Map<String, List<Table>> arrays = new LinkedHashMap<>();
    private final Set<String> known = new LinkedHashSet<>();
    private Optional<Section> section = Optional.empty();
    private boolean mistaken;

    private Table(List<String> path, Map<?, ?> values, Mistakes findings) {
        this.path = path;
        this.values = values;
        this.findings = findings;
    }

    /**
     * The outermost table.
     *
     * @param values its keys and values, as read by {@code Toml}
     * @param findings receives mistakes
     * @return the table
     */
    static Table root(Map<String, Object> values, Mistakes findings) {
        return new Table(List.of(), values, findings);
    }

    /**
     * Sets what kind of table this is: from here on only its keys can be read.
     *
     * @param kind the kind
     * @return this table
     */
    Table as(Section kind) {
        section = Optional.of(kind);
        return this;
    }

    /**
     * The value of a key that has a default, or its default.
     *
     * @param key the key
     * @param <T> the type of its value
     * @return the value; the default if left out or wrong
     */
    <T> T get(Key<T> key) {
        T usual = key.usual().orElseThrow();
        if (!has(key.name()) && key.reported()) {
            return defaultOf(key.name(), usual, key.without());
        }
        return find(key).orElse(usual);
    }

    /**
     * The value of an optional key.
     *
     * @param key the key
     * @param <T> the type of its value
     * @return the value; empty if left out or wrong
     */
    <T> Optional<T> find(Key<T> key) {
        return has(key.name()) ? key.reader().apply(this, key.name()) : Optional.empty();
    }

    /**
     * The value of a required key.
     *
     * @param key the key
     * @param wanted what would be valid, for the message
     * @param <T> the type of its value
     * @return the value; empty if missing or wrong
     */
    <T> Optional<T> need(Key<T> key, String wanted) {
        noteIfMissing(key.name(), wanted);
        return find(key);
    }

    /**
     * Whether a key exists.
     *
     * @param key its name
     * @return true also if its value is wrong
     */
    boolean has(String key) {
        if (section.isPresent() && section.get().key(key).isEmpty()) {
            throw new IllegalStateException(
                    key + " is not described in section " + section.get().path());
        }
        known.add(key);
        return values.containsKey(key);
    }

    /**
     * The keys that exist.
     *
     * @return their names, in the order of the file
     */
    List<String> keys() {
        return values.keySet().stream().map(String::valueOf).toList();
    }

    /**
     * Whether no mistakes have been found so far, here and in the tables within.
     *
     * @return false once a mistake has been recorded
     */
    boolean right() {
        return !mistaken && inner().allMatch(Table::right);
    }

    private Stream<Table> inner() {
        return Stream.concat(tables.values().stream(), arrays.values().stream().flatMap(List::stream));
    }

    /**
     * A table within this one.
     *
     * @param key its name
     * @return the table; an empty one if it does not exist
     */
    Table table(String key) {
        return tables.computeIfAbsent(key, this::newTable);
    }

    /**
     * The tables of an array within this one.
     *
     * @param key its name
     * @return the tables; empty if the array does not exist
     */
    List<Table> tables(String key) {
        return arrays.computeIfAbsent(key, this::newTables);
    }

    /**
     * A table within this one, or the tables of an array.
     *
     * @param key its name
     * @return the tables; an empty one if it is neither a table nor an array with tables in it
     */
    List<Table> tableOrTables(String key) {
        if (values.get(key) instanceof List<?> elements && !elements.isEmpty()) {
            return tables(key);
        }
        return List.of(table(key));
    }

    /**
     * Whether the value of a key is a table.
     *
     * @param key its name
     * @return false also if it does not exist
     */
    boolean isTable(String key) {
        return has(key) && values.get(key) instanceof Map;
    }

    /**
     * The keys that exist and have not been read.
     *
     * @return their names, in the order of the file
     */
    List<String> unasked() {
        return keys().stream().filter(key -> !known.contains(key)).toList();
    }

    /**
     * An optional text.
     *
     * @param key its name
     * @param wanted what would be valid, for the message
     * @return the text, which is not empty; an empty result if left out or wrong
     */
    Optional<String> text(String key, String wanted) {
        Optional<String> text = textOrEmpty(key, wanted);
        if (text.isPresent() && text.get().isEmpty()) {
            mistake(key, new MistakeText("empty", "is empty", wanted));
            return Optional.empty();
        }
        return text;
    }

    /**
     * An optional text that may be empty.
     *
     * @param key its name
     * @param wanted what would be valid, for the message
     * @return the text; an empty result if left out or wrong
     */
    Optional<String> textOrEmpty(String key, String wanted) {
        if (!has(key)) {
            return Optional.empty();
        }
        if (values.get(key) instanceof String text) {
            return Optional.of(text);
        }
        mistake(key, new MistakeText("not_text", isValue(key) + ", not text", wanted).with("value", shown(key)));
        return Optional.empty();
    }

    /**
     * A required text.
     *
     * @param key its name
     * @param wanted what would be valid, for the message
     * @return the text; an empty result if missing or wrong
     */
    Optional<String> needText(String key, String wanted) {
        noteIfMissing(key, wanted);
        return text(key, wanted);
    }

    /**
     * An optional array of texts.
     *
     * @param key its name
     * @param wanted what would be valid, for the message
     * @return the texts, none of them empty; an empty list if the array is left out or wrong
     */
    List<String> texts(String key, String wanted) {
        return texts(key, wanted, element -> wanted, String.class::isInstance);
    }

    /**
     * An optional array of words that a printer reports. A whole number, true and false count as their JSON spelling.
     *
     * @param key its name
     * @param wanted what would be valid, for the message
     * @return the words, none of them empty; an empty list if the array is left out or wrong
     */
    List<String> words(String key, String wanted) {
        return texts(
                key,
                wanted,
                element -> element instanceof Number
                        ? wanted + ", this one in quotes, as the printer writes it: "
                                + Wording.quoted(String.valueOf(element))
                        : wanted,
                element -> element instanceof String
                        || element instanceof Long
                        || element instanceof Integer
                        || element instanceof Boolean);
    }

    /**
     * A word that a printer reports: text, or a whole number, true or false in their JSON spelling.
     *
     * @param key its name
     * @param wanted what would be valid, for the message
     * @return the word; empty if left out or wrong
     */
    Optional<String> word(String key, String wanted) {
        if (!has(key)) {
            return Optional.empty();
        }
        Object value = values.get(key);
        if (value instanceof String || value instanceof Long || value instanceof Integer || value instanceof Boolean) {
            return Optional.of(String.valueOf(value));
        }
        mistake(key, isValue(key), wanted);
        return Optional.empty();
    }

    private List<String> texts(
            String key, String wanted, Function<Object, String> wantedFor, Predicate<Object> isText) {
        if (!has(key)) {
            return List.of();
        }
        List<String> texts = new ArrayList<>();
        if (values.get(key) instanceof List<?> elements && !elements.isEmpty()) {
            for (Object element : elements) {
                if (isText.test(element) && !String.valueOf(element).isEmpty()) {
                    texts.add(String.valueOf(element));
                } else {
                    mistake(key, "has " + Wording.value(element) + " in it", wantedFor.apply(element));
                }
            }
        } else {
            mistake(key, values.get(key) instanceof List ? "is empty" : isValue(key), wanted);
        }
        return texts;
    }

    /**
     * One text or several in an array, optional.
     *
     * @param key its name
     * @param wanted what would be valid, for the message
     * @return the texts, none of them empty; an empty list if left out or wrong
     */
    List<String> textOrTexts(String key, String wanted) {
        return values.get(key) instanceof List
                ? texts(key, wanted)
                : text(key, wanted).map(List::of).orElse(List.of());
    }

    /**
     * An optional text that is parsed.
     *
     * @param key its name
     * @param wanted what would be valid, for the message if it is not text
     * @param reader the parser; if it throws an {@code IllegalArgumentException}, its message is reported
     * @param <T> the type of the result
     * @return the result; empty if left out or wrong
     */
    <T> Optional<T> parsed(String key, String wanted, Function<String, T> reader) {
        return text(key, wanted).flatMap(text -> attempt(key, wanted, () -> reader.apply(text)));
    }

    /**
     * Runs something that may be refused.
     *
     * @param key the key to blame
     * @param wanted what would be valid, if the refusal does not say so itself after a semicolon
     * @param deed what to do; if it throws an {@code IllegalArgumentException}, its message is reported
     * @param <T> the type of the result
     * @return the result; empty if it was refused
     */
    <T> Optional<T> attempt(String key, String wanted, Supplier<T> deed) {
        try {
            return Optional.of(deed.get());
        } catch (IllegalArgumentException e) {
            String message = String.valueOf(e.getMessage());
            int end = message.lastIndexOf("; ");
            String what = end < 0 ? message : message.substring(0, end);
            String right = end < 0 ? wanted : message.substring(end + 2);
            mistake(key, new MistakeText("not_valid", what, right).with("value", shown(key)));
            return Optional.empty();
        }
    }

    /**
     * A required time of day: a TOML local time, or the same as text.
     *
     * @param key its name
     * @return the time; midnight if it is missing or wrong
     */
    LocalTime needTimeOfDay(String key) {
        noteIfMissing(key, WANTED_TIME);
        if (has(key) && values.get(key) instanceof LocalTime time) {
            return time;
        }
        return text(key, WANTED_TIME).flatMap(text -> timeOfDay(key, text)).orElse(LocalTime.MIDNIGHT);
    }

    private Optional<LocalTime> timeOfDay(String key, String text) {
        try {
            return Optional.of(LocalTime.parse(text));
        } catch (DateTimeParseException e) {
            mistake(key, isValue(key) + ", which is not a time of day", WANTED_TIME);
            return Optional.empty();
        }
    }

    /**
     * An optional name of something.
     *
     * @param key its name
     * @param kind what is named, such as {@code zone}
     * @param known everything of that kind
     * @param <T> the kind
     * @return what is named; empty if the name is left out or wrong
     */
    <T> Optional<T> named(String key, String kind, Map<String, T> known) {
        return text(key, "give the name of a " + kind).flatMap(name -> lookedUp(key, name, kind, known));
    }

    /**
     * A name of something, or several in an array, optional.
     *
     * @param key its name
     * @param kind what is named, such as {@code state}
     * @param known everything of that kind
     * @param <T> the kind
     * @return what is named, leaving out wrong names
     */
    <T> List<T> allNamed(String key, String kind, Map<String, T> known) {
        return textOrTexts(key, "give the name of a " + kind + ", or several in an array").stream()
                .flatMap(name -> lookedUp(key, name, kind, known).stream())
                .toList();
    }

    /**
     * An optional name.
     *
     * @param key its name
     * @param kind what is named, such as {@code look}
     * @param known all names of that kind
     * @param wanted what would be valid, for the message, if no known name is close
     * @return the name; empty if left out or unknown
     */
    Optional<String> name(String key, String kind, Set<String> known, String wanted) {
        Optional<String> name = text(key, "give the name of a " + kind);
        name.filter(word -> !known.contains(word)).ifPresent(word -> noteNotKnown(key, word, kind, known, wanted));
        return name.filter(known::contains);
    }

    private <T> Optional<T> lookedUp(String key, String name, String kind, Map<String, T> known) {
        if (!known.containsKey(name)) {
            noteNotKnown(key, name, kind, known.keySet(), wantedName(kind, known.keySet()));
        }
        return Optional.ofNullable(known.get(name));
    }

    private void noteNotKnown(String key, String name, String kind, Set<String> known, String wanted) {
        String right = Nearest.to(name, known)
                .map(near -> "did you mean \"" + near + "\"?")
                .orElse(wanted);
        mistake(
                key,
                new MistakeText(
                                "not_known_" + kind,
                                "is " + Wording.quoted(name) + ", which is not a known " + kind,
                                right)
                        .with("value", name)
                        .with("near", Nearest.to(name, known).orElse("")));
    }

    private static String wantedName(String kind, Set<String> known) {
        return known.isEmpty()
                ? "there is no " + kind + " here; leave it out"
                : "give one of \"" + String.join("\", \"", known) + '"';
    }

    /**
     * An optional yes or no.
     *
     * @param key its name
     * @return empty if left out or wrong
     */
    Optional<Boolean> flag(String key) {
        if (!has(key)) {
            return Optional.empty();
        }
        if (values.get(key) instanceof Boolean flag) {
            return Optional.of(flag);
        }
        mistake(key, new MistakeText("not_flag", isValue(key), "give true or false").with("value", shown(key)));
        return Optional.empty();
    }

    /**
     * An optional whole number.
     *
     * @param key its name
     * @param least the minimum
     * @param most the maximum
     * @param otherwise the default
     * @return the number
     */
    int whole(String key, int least, int most, int otherwise) {
        return wholeIfThere(key, least, most).orElseGet(() -> defaultOf(key, otherwise, Integer.toString(otherwise)));
    }

    /**
     * A required whole number.
     *
     * @param key its name
     * @param least the minimum
     * @param most the maximum
     * @return the number; {@code most} if it is missing or wrong
     */
    int needWhole(String key, int least, int most) {
        noteIfMissing(key, wantedWhole(least, most));
        return wholeIfThere(key, least, most).orElse(most);
    }

    /**
     * An optional whole number.
     *
     * @param key its name
     * @param least the minimum
     * @param most the maximum
     * @return the number; empty if left out or wrong
     */
    OptionalInt wholeIfThere(String key, int least, int most) {
        if (!has(key)) {
            return OptionalInt.empty();
        }
        if (values.get(key) instanceof Integer number && number >= least && number <= most) {
            return OptionalInt.of(number);
        }
        mistake(
                key,
                new MistakeText("not_whole", isValue(key), wantedWhole(least, most))
                        .with("value", shown(key))
                        .with("low", least)
                        .with("high", most));
        return OptionalInt.empty();
    }

    /**
     * An optional number.
     *
     * @param key its name
     * @param least the minimum
     * @param most the maximum
     * @param otherwise the default
     * @return the number
     */
    double number(String key, double least, double most, double otherwise) {
        OptionalDouble number = numberIfThere(key, least, most);
        return number.isPresent() ? number.getAsDouble() : defaultOf(key, otherwise, Wording.number(otherwise));
    }

    /**
     * A required number.
     *
     * @param key its name
     * @param least the minimum
     * @param most the maximum
     * @return the number; {@code most} if it is missing or wrong
     */
    double needNumber(String key, double least, double most) {
        noteIfMissing(key, wantedNumber(least, most));
        return numberIfThere(key, least, most).orElse(most);
    }

    /**
     * An optional number.
     *
     * @param key its name
     * @param least the minimum
     * @param most the maximum
     * @return the number, which is finite; empty if left out or wrong
     */
    OptionalDouble numberIfThere(String key, double least, double most) {
        return has(key) ? inRange(key, values.get(key), least, most) : OptionalDouble.empty();
    }

    /**
     * A number, or several in an array, optional.
     *
     * @param key name of the number or the array
     * @param least the minimum of each
     * @param most the maximum of each
     * @param otherwise the default
     * @return the numbers, one if it is not an array
     */
    List<Double> numbers(String key, double least, double most, double otherwise) {
        return values.get(key) instanceof List
                ? numbers(key, least, most)
                : List.of(number(key, least, most, otherwise));
    }

    /**
     * An optional array of numbers.
     *
     * @param key its name
     * @param least the minimum of each
     * @param most the maximum of each
     * @return the numbers, {@code most} for each that is wrong; an empty array if it is left out or not an array
     */
    List<Double> numbers(String key, double least, double most) {
        if (!has(key)) {
            return List.of();
        }
        if (!(values.get(key) instanceof List<?> elements)) {
            mistake(
                    key,
                    new MistakeText("not_numbers", isValue(key), "give numbers in an array").with("value", shown(key)));
            return List.of();
        }
        List<Double> numbers = new ArrayList<>();
        for (Object element : elements) {
            numbers.add(inRange(key, element, least, most).orElse(most));
        }
        return numbers;
    }

    /**
     * One of a few words, optional: the names of an enum's constants in lower case.
     *
     * @param key its name
     * @param otherwise the default
     * @param <E> the enum
     * @return what the word stands for
     */
    <E extends Enum<E>> E choice(String key, E otherwise) {
        Map<String, E> choices = Words.of(otherwise.getDeclaringClass().getEnumConstants(), Words::lowerCase);
        if (!has(key)) {
            return defaultOf(key, otherwise, Words.lowerCase(otherwise));
        }
        return oneOf(key, choices).orElse(otherwise);
    }

    /**
     * One of a few words, optional.
     *
     * @param key its name
     * @param choices what each word stands for
     * @param <T> what they stand for
     * @return what the word stands for; empty if left out or wrong
     */
    <T> Optional<T> oneOf(String key, Map<String, T> choices) {
        String wanted = "give one of \"" + String.join("\", \"", choices.keySet()) + '"';
        Optional<String> word = text(key, wanted);
        if (word.isPresent() && !choices.containsKey(word.get())) {
            mistake(
                    key,
                    new MistakeText(
                                    "not_choice",
                                    isValue(key),
                                    EverydayWords.value(key, word.get()).orElse(wanted))
                            .with("value", word.get())
                            .with("choices", String.join(", ", choices.keySet())));
        }
        return word.map(choices::get);
    }

    /**
     * The folder against which a relative path is resolved.
     *
     * @param key the key that has it
     * @return the folder of the file that has the key
     */
    Path folder(String key) {
        return findings.folder(pathOf(key));
    }

    /**
     * Records a signal that the file itself declares.
     *
     * @param signal which can be followed from here on
     */
    void know(Signal signal) {
        findings.know(signal);
    }

    /**
     * The signals that the file may name.
     *
     * @return by name
     */
    Map<String, Signal> signals() {
        return findings.signals();
    }

    /**
     * Records a mistake at a key of this table.
     *
     * @param key its name, whether or not it exists
     * @param what what is wrong, to follow the key
     * @param whatWouldBeRight what to do
     */
    void mistake(String key, String what, String whatWouldBeRight) {
        mistake(key, new MistakeText("", what, whatWouldBeRight));
    }

    /**
     * Records a mistake at a key of this table.
     *
     * @param key its name, whether or not it exists
     * @param said what is wrong, and what to do
     */
    void mistake(String key, MistakeText said) {
        mistaken = true;
        findings.mistake(pathOf(key), said);
    }

    /** What the value of a key is, as it is shown. */
    private String shown(String key) {
        return Wording.value(values.get(key));
    }

    /**
     * Records that a default was used.
     *
     * @param key name of the key that was left out
     * @param value the default
     * @param shown the value as it would be written in the file
     * @param <T> the type of the value
     * @return the value
     */
    <T> T defaultOf(String key, T value, String shown) {
        findings.tookDefault(pathOf(key), shown);
        return value;
    }

    /**
     * Removes the defaults recorded here and in the tables within from what is reported about the file.
     *
     * @return values by dotted key, in the order in which they were read
     */
    Map<String, String> takeDefaults() {
        return findings.takeDefaults(path);
    }

    /** Reports every key, here and in the tables within, that has not been read. Call this once everything has been read. */
    void noteUnknown() {
        unasked().forEach(this::noteUnknown);
        inner().forEach(Table::noteUnknown);
    }

    /** Reports invisible names, here and in the tables within. Call this once everything has been read. */
    void noteUnseen() {
        keys().stream()
                .filter(key -> known.contains(key) && Wording.hasControl(key))
                .forEach(key -> mistake(key, "has a control character in its name", "write the name without it"));
        inner().forEach(Table::noteUnseen);
    }

    /** Marks every key here as known, because the table does not apply to what is fitted. */
    void leaveOut() {
        known.addAll(keys());
    }

    /** Reports every key here that was not read although it applies in other tables of its kind. */
    void noteUseless() {
        Map<String, String> goesWith = section.orElseThrow().goesWith();
        for (String key : unasked()) {
            if (goesWith.containsKey(key)) {
                known.add(key);
                mistake(
                        key,
                        new MistakeText(
                                "not_here", "does not apply here", "remove it; it goes with " + goesWith.get(key)));
            }
        }
    }

    /**
     * Checks that a file that comes with Lampwright is valid.
     *
     * @throws IllegalStateException if it is not
     */
    void requireRight() {
        noteUnknown();
        try {
            findings.throwIfMistaken();
        } catch (ConfigException e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }

    private void noteUnknown(String key) {
        if (section.isPresent() && section.get().key(key).isPresent()) {
            mistake(key, new MistakeText("not_here", "does not apply here", "remove it"));
            return;
        }
        List<String> valid = section.map(Section::names).orElse(List.copyOf(known));
        String all = "remove it; the keys here are: " + String.join(", ", valid);
        String right = byMeaning(key)
                .or(() -> Nearest.to(key, valid).map(near -> "did you mean " + Wording.key(List.of(near)) + "?"))
                .orElse(all);
        mistake(
                key,
                new MistakeText(
                        "unknown_key", "is not known", key.contains(".") ? "write it without the quotes" : right));
    }

    private Optional<String> byMeaning(String key) {
        return section.filter(LayerKeys.SECTION::equals).flatMap(layer -> EverydayWords.key(key));
    }

    private Table newTable(String key) {
        boolean there = has(key);
        if (there && values.get(key) instanceof Map<?, ?> inner) {
            return new Table(pathOf(key), inner, findings);
        }
        if (there) {
            mistake(key, isValue(key), "give a table: [" + Wording.key(pathOf(key)) + "] with its keys below");
        }
        return new Table(pathOf(key), Map.of(), there ? findings.unheard() : findings);
    }

    private List<Table> newTables(String key) {
        if (!has(key)) {
            return List.of();
        }
        if (!(values.get(key) instanceof List<?> elements)) {
            mistake(
                    key,
                    isValue(key),
                    "give an array of tables: [[" + Wording.key(pathOf(key)) + "]] with the keys below");
            return List.of();
        }
        List<Table> tables = new ArrayList<>();
        for (int i = 0; i < elements.size(); i++) {
            List<String> place = new ArrayList<>(pathOf(key));
            place.add(Integer.toString(i));
            if (elements.get(i) instanceof Map<?, ?> inner) {
                tables.add(new Table(List.copyOf(place), inner, findings));
            } else {
                mistaken = true;
                findings.mistake(place, "is " + Wording.value(elements.get(i)), "give a table: { key = value, … }");
            }
        }
        return List.copyOf(tables);
    }

    private OptionalDouble inRange(String key, Object value, double least, double most) {
        double number = value instanceof Number n ? n.doubleValue() : Double.NaN;
        if (number >= least && number <= most) {
            return OptionalDouble.of(number);
        }
        mistake(
                key,
                new MistakeText("not_number", "is " + Wording.value(value), wantedNumber(least, most))
                        .with("value", Wording.value(value))
                        .with("low", least)
                        .with("high", most));
        return OptionalDouble.empty();
    }

    private void noteIfMissing(String key, String wanted) {
        if (!has(key)) {
            mistake(key, new MistakeText("missing", "is missing", wanted));
        }
    }

    private String isValue(String key) {
        return "is " + Wording.value(values.get(key));
    }

    private static String wantedWhole(int least, int most) {
        return "give a whole number from " + least + " to " + most;
    }

    private static String wantedNumber(double least, double most) {
        return "give a number from " + Wording.number(least) + " to " + Wording.number(most);
    }

    private List<String> pathOf(String key) {
        List<String> inner = new ArrayList<>(path);
        inner.add(key);
        return List.copyOf(inner);
    }
}
