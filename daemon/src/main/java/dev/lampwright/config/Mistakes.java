package dev.lampwright.config;

import dev.lampwright.signal.Signal;
import dev.lampwright.toml.TomlDocument;
import dev.lampwright.toml.TomlMistake;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is found while one configuration is read: mistakes, each reported once, the defaults for keys left out, and the signals that it
 * declares.
 */
final class Mistakes {
    private static final Comparator<Mistake> IN_THE_FILE_FIRST = Comparator.comparing(Mistake::file)
            .thenComparingInt(mistake -> mistake.line() == 0 ? Integer.MAX_VALUE : mistake.line());

    private final Origins origins;
    private final Set<Mistake> mistakes = new LinkedHashSet<>();
    private final Map<String, String> defaults = new LinkedHashMap<>();
    private final Map<String, Signal> signals = new LinkedHashMap<>(FollowKeys.SIGNALS);

    /**
     * Starts with what is wrong with the text itself.
     *
     * @param file name of the file, for messages
     * @param document what was read from it
     */
    Mistakes(String file, TomlDocument document) {
        this(Origins.of(new Origin(file, document, Path.of("").toAbsolutePath())));
    }

    /**
     * Starts with what is wrong with the text itself.
     *
     * @param origins the file, and what it shares with others
     */
    Mistakes(Origins origins) {
        this.origins = origins;
        origins.all().forEach(origin -> origin.document().mistakes().forEach(mistake -> syntax(origin, mistake)));
    }

    private void syntax(Origin origin, TomlMistake mistake) {
        String column = mistake.column() == 0 ? "" : "column " + mistake.column() + ": ";
        mistakes.add(new Mistake(
                origin.file(),
                mistake.line(),
                Wording.key(mistake.key()),
                column + mistake.what(),
                mistake.whatWouldBeRight()));
    }

    /**
     * A file's values, once its text is known to be valid.
     *
     * @return the outermost table
     * @throws ConfigException if there are mistakes
     */
    Table root() throws ConfigException {
        throwIfMistaken();
        return Table.root(origins.values(), this);
    }

    /**
     * Records a mistake.
     *
     * @param path the key; its line is that of the innermost table around it if it does not exist itself
     * @param what what is wrong, to follow the key
     * @param whatWouldBeRight what to do
     */
    void mistake(List<String> path, String what, String whatWouldBeRight) {
        mistake(path, new MistakeText("", what, whatWouldBeRight));
    }

    /**
     * Records a mistake.
     *
     * @param path the key; its line is that of the innermost table around it if it does not exist itself
     * @param said what is wrong and what to do
     */
    void mistake(List<String> path, MistakeText said) {
        Origin origin = origins.of(path);
        mistakes.add(new Mistake(
                origin.file(),
                origin.document().line(path),
                Wording.key(path),
                Wording.withShortValues(said.what()),
                Wording.withShortValues(said.whatWouldBeRight()),
                said.code(),
                said.values()));
    }

    /** Notes that a file has a key that it may not have, whatever other files have. */
    void mistakeIn(Origin origin, String key, String what, String whatWouldBeRight) {
        List<String> path = List.of(key);
        mistakes.add(
                new Mistake(origin.file(), origin.document().line(path), Wording.key(path), what, whatWouldBeRight));
    }

    /**
     * The folder against which a relative path is resolved.
     *
     * @param path the key that has it
     */
    Path folder(List<String> path) {
        return origins.of(path).folder();
    }

    /**
     * Findings that are discarded, for consequences of a mistake recorded here.
     *
     * @return new findings
     */
    Mistakes unheard() {
        Mistakes unheard = new Mistakes(origins);
        unheard.signals.putAll(signals);
        return unheard;
    }

    /**
     * Records a signal that the file itself declares.
     *
     * @param signal which can be followed from here on
     */
    void know(Signal signal) {
        signals.put(signal.key(), signal);
    }

    /**
     * The signals that the file may name.
     *
     * @return by name
     */
    Map<String, Signal> signals() {
        return signals;
    }

    /**
     * Records a default.
     *
     * @param path the key that was left out
     * @param value the default
     */
    void tookDefault(List<String> path, String value) {
        defaults.put(Wording.key(path), value);
    }

    /**
     * The defaults used.
     *
     * @return values by key, in the order in which they were read
     */
    Map<String, String> defaults() {
        return defaults;
    }

    /**
     * Removes the defaults below one key, for a section that is reported separately.
     *
     * @param path the key
     * @return values by key, in the order in which they were read
     */
    Map<String, String> takeDefaults(List<String> path) {
        String below = Wording.key(path) + '.';
        Map<String, String> taken = new LinkedHashMap<>(defaults);
        taken.keySet().removeIf(key -> !key.startsWith(below));
        defaults.keySet().removeAll(taken.keySet());
        return taken;
    }

    /** Whether there are mistakes. */
    boolean isMistaken() {
        return !mistakes.isEmpty();
    }

    /**
     * Ends the reading.
     *
     * @throws ConfigException if there are mistakes
     */
    void throwIfMistaken() throws ConfigException {
        if (!mistakes.isEmpty()) {
            throw new ConfigException(
                    mistakes.stream().sorted(IN_THE_FILE_FIRST).toList());
        }
    }
}
