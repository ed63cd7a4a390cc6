package dev.lampwright.tool.survey;

import dev.lampwright.payload.Quantity;
import dev.lampwright.toml.TomlEditor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Merges what a survey has found into a configuration. Only new findings are written: the user's bindings that the survey has not found,
 * words that it has not heard, and comments stay.
 */
public final class PrinterMerge {
    private static final List<String> ONLY = List.of("printer");

    /** The keys that say where something is; the others of a state are its words, those of a reading say what the number is. */
    private static final List<String> PLACE = List.of("topic", "among", "where", "at", "field", "separator", "pattern");

    /** How {@link ProposedConfig} marks words that were not heard. */
    private static final String GUESS = "# not heard";

    /** How the guided fitting marks a placeholder. */
    private static final List<String> STAND_IN = List.of("TO DO: nothing was found", "prints, and put in");

    private final TomlEditor file;
    private final String sections;
    private final TomlEditor found;
    private final List<String> printer;
    private final List<String> statePath;
    private final List<String> conditionPath;
    private final List<String> readingsPath;

    private PrinterMerge(String text, String sections, List<String> printer) {
        file = TomlEditor.of(text);
        this.sections = sections;
        found = TomlEditor.of(sections);
        this.printer = printer;
        statePath = within(printer, "state");
        conditionPath = within(printer, "condition");
        readingsPath = within(printer, "readings");
    }

    /**
     * Puts sections of a printer into a configuration.
     *
     * @param text the configuration, valid TOML
     * @param sections what {@link ProposedConfig#printerSections} gives
     * @return the configuration with it
     */
    public static String into(String text, String sections) {
        return new PrinterMerge(text, sections, ONLY).merged();
    }

    /**
     * Puts sections of a printer into a configuration that gives its printers names.
     *
     * @param text the configuration, valid TOML
     * @param sections what {@link ProposedConfig#printerSections} gives
     * @param name of the printer
     * @return the configuration with it
     */
    public static String into(String text, String sections, String name) {
        return new PrinterMerge(text, ProposedConfig.named(sections, name), List.of("printers", name)).merged();
    }

    private String merged() {
        dropStandIn();
        single(within(printer, "fault_text"));
        state();
        conditions();
        readings();
        single(within(within(printer, "events"), "camera"));
        return file.text();
    }

    private void dropStandIn() {
        boolean standIn = file.comments(statePath).stream().anyMatch(line -> line.startsWith(STAND_IN.get(0)));
        if (standIn) {
            STAND_IN.forEach(beginning -> file.uncomment(statePath, beginning));
            file.remove(statePath);
        }
    }

    /** A binding that has its own section. */
    private void single(List<String> path) {
        Optional<Object> next = found.get(path);
        if (next.isEmpty()) {
            return;
        }
        Optional<Object> now = file.get(path);
        if (now.isEmpty()) {
            addSection(path);
        } else if (!(now.get() instanceof Map<?, ?> table) || !samePlace(table, (Map<?, ?>) next.get())) {
            file.set(path, next.get());
        }
    }

    /** Adds a section as it was found, with its comments; without them where the file has no room for them. */
    private void addSection(List<String> path) {
        try {
            file.append(printer, section("[" + String.join(".", path) + "]"));
        } catch (IllegalStateException e) {
            file.set(path, found.get(path).orElseThrow());
        }
    }

    /** The lines from a header to the next empty line. */
    private String section(String header) {
        int from = sections.indexOf(header);
        int end = sections.indexOf("\n\n", from);
        return sections.substring(from, end < 0 ? sections.length() : end);
    }

    private void state() {
        Optional<Object> next = found.get(statePath);
        if (next.isEmpty() || !(next.get() instanceof Map<?, ?> heard)) {
            return;
        }
        Object now = file.get(statePath).orElse(null);
        if (now == null) {
            addSection(statePath);
        } else if (now instanceof List<?> several) {
            stateAmong(several, heard);
        } else if (now instanceof Map<?, ?> table) {
            PLACE.forEach(key -> move(within(statePath, key), heard.get(key)));
            addWords(statePath, table, heard);
        }
    }

    private void move(List<String> path, Object value) {
        if (value == null) {
            file.remove(path);
        } else {
            file.set(path, value);
        }
    }

    /**
     * Among several places, the last one that reports something counts: a new one goes first, so that those chosen by hand keep their rank.
     */
    private void stateAmong(List<?> several, Map<?, ?> heard) {
        for (int i = 0; i < several.size(); i++) {
            if (several.get(i) instanceof Map<?, ?> table && samePlace(table, heard)) {
                addWords(within(statePath, Integer.toString(i)), table, heard);
                return;
            }
        }
        file.insert(statePath, 0, heard);
    }

    private void addWords(List<String> path, Map<?, ?> now, Map<?, ?> heard) {
        List<String> bound = new ArrayList<>();
        now.forEach((key, words) -> {
            if (!PLACE.contains(key.toString())) {
                bound.addAll(texts(words));
            }
        });
        heard.forEach((key, words) -> {
            String state = key.toString();
            boolean guess = isGuess(state);
            if (!PLACE.contains(state) && !guess) {
                List<String> all = new ArrayList<>(texts(now.get(state)));
                texts(words).stream()
                        .filter(word -> bound.stream().noneMatch(word::equalsIgnoreCase))
                        .forEach(all::add);
                if (all.size() > texts(now.get(state)).size()) {
                    file.set(within(path, state), all);
                }
            }
        });
    }

    private boolean isGuess(String state) {
        return found.behind(within(statePath, state)).startsWith(GUESS);
    }

    private static List<String> texts(Object words) {
        return words instanceof List<?> list
                ? list.stream().map(Object::toString).toList()
                : List.of();
    }

    /** Flags and codes that show a state by themselves: those that the file does not have are added after those that it has. */
    private void conditions() {
        List<?> next = found.get(conditionPath)
                .filter(List.class::isInstance)
                .map(each -> (List<?>) each)
                .orElse(List.of());
        List<String> sections = sections("[[" + String.join(".", conditionPath) + "]]");
        for (int i = 0; i < next.size(); i++) {
            Object now = file.get(conditionPath).orElse(List.of());
            if (now instanceof List<?> known && !known.contains(next.get(i))) {
                addCondition(sections.get(i), known.size(), next.get(i));
            }
        }
    }

    private void addCondition(String section, int behind, Object condition) {
        try {
            file.append(printer, section);
        } catch (IllegalStateException e) {
            file.insert(conditionPath, behind, condition);
        }
    }

    /** The lines from each such header to the next empty line. */
    private List<String> sections(String header) {
        return Arrays.stream(sections.split("\n\n", -1))
                .map(String::strip)
                .filter(each -> each.startsWith(header))
                .toList();
    }

    private void readings() {
        if (!(found.get(readingsPath).orElse(Map.of()) instanceof Map<?, ?> parts)) {
            return;
        }
        if (file.get(readingsPath).isEmpty() && !parts.isEmpty()) {
            addSection(readingsPath);
            return;
        }
        Map<List<String>, Map<?, ?>> places = bound(parts);
        Map<List<String>, Map<?, ?>> known = new LinkedHashMap<>(places);
        known.keySet().removeIf(path -> !isKnown(path));
        known.forEach(this::reading);
        Set<List<String>> wanted = ownWanted(places);
        wanted.forEach(path -> add(path, places.get(path)));
    }

    /**
     * What each path below the readings is bound to, if that is one place; the name of a reading has one part, or two with a dot between.
     */
    private Map<List<String>, Map<?, ?>> bound(Map<?, ?> readings) {
        Map<List<String>, Map<?, ?>> bound = new LinkedHashMap<>();
        readings.forEach((name, value) -> {
            if (!(value instanceof Map<?, ?> table)) {
                return;
            }
            List<String> path = within(readingsPath, name.toString());
            if (table.containsKey("topic")) {
                bound.put(path, table);
            } else {
                table.forEach((measure, place) -> {
                    if (place instanceof Map<?, ?> inner) {
                        bound.put(within(path, measure.toString()), inner);
                    }
                });
            }
        });
        return bound;
    }

    private boolean isKnown(List<String> path) {
        String key = name(path);
        return Arrays.stream(Quantity.values())
                .anyMatch(quantity -> quantity.key().equals(key));
    }

    private String name(List<String> path) {
        return String.join(".", path.subList(readingsPath.size(), path.size()));
    }

    /**
     * Readings with names that the survey has chosen. Left out are those at places that the file already reads, under any name, and those
     * whose names the file uses for something else; both of a heater's if either is.
     */
    private Set<List<String>> ownWanted(Map<List<String>, Map<?, ?>> places) {
        Map<?, ?> now = (Map<?, ?>) file.get(readingsPath).orElse(Map.of());
        List<Map<String, Object>> taken =
                bound(now).values().stream().map(PrinterMerge::places).toList();
        Set<Object> leftOut = new HashSet<>();
        Set<List<String>> own = new LinkedHashSet<>();
        places.forEach((path, place) -> {
            if (!isKnown(path)) {
                own.add(path);
                String name = path.get(readingsPath.size());
                if (now.containsKey(name) || taken.contains(places(place))) {
                    leftOut.add(name);
                }
            }
        });
        own.removeIf(path -> leftOut.contains(path.get(readingsPath.size())));
        return own;
    }

    private void add(List<String> path, Map<?, ?> place) {
        file.set(path, place);
        file.comment(path, found.comments(path));
    }

    private void reading(List<String> path, Map<?, ?> place) {
        Object now = file.get(path).orElse(null);
        if (now instanceof List<?>) {
            return;
        }
        if (now instanceof Map<?, ?> table && samePlace(table, place)) {
            addUnit(path, table, place);
            return;
        }
        file.set(path, place);
        file.uncomment(path, name(path) + ":");
        file.comment(path, found.comments(path));
    }

    /** The unit that the user has set for a number stays. */
    private void addUnit(List<String> path, Map<?, ?> now, Map<?, ?> place) {
        if (place.containsKey("unit") && !now.containsKey("unit") && !now.containsKey("scale")) {
            file.set(within(path, "unit"), place.get("unit"));
        }
    }

    private static boolean samePlace(Map<?, ?> one, Map<?, ?> other) {
        return places(one).equals(places(other));
    }

    private static Map<String, Object> places(Map<?, ?> table) {
        Map<String, Object> places = new LinkedHashMap<>();
        PLACE.forEach(key -> places.put(key, Objects.requireNonNullElse(table.get(key), "")));
        return places;
    }

    private static List<String> within(List<String> path, String name) {
        List<String> inner = new ArrayList<>(path);
        inner.add(name);
        return inner;
    }
}
