package dev.lampwright.config;

import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Unit;
import dev.lampwright.printer.Bindings;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * User-defined readings in {@code [printer.readings]}: every name there that is not a {@link Quantity}. A temperature and a target under
 * one name are an {@link OwnHeater}; anything else is a number with a unit or a range.
 */
final class OwnReadings {
    private static final double LARGEST = 1e9;
    private static final int LONGEST_UNIT = 20;
    private static final int MOST = 64;
    private static final int MOST_HEATERS = 8;
    private static final List<String> KNOWN_HEATERS = List.of("bed", "nozzle", "chamber");
    private static final String ACTUAL = "actual_C";
    private static final String SETPOINT = "setpoint_C";
    private static final Map<String, Double> FULL = Map.of("percent", 100.0, "permille", 1000.0, "share", 1.0);
    private static final String WANTED_UNIT =
            "give at most " + LONGEST_UNIT + " characters, for instance \"percent\", \"mm/s\" or \"rpm\"";

    /** The section of a user-defined number. */
    static final Section SECTION = new Section(
                    "printer.readings.YOURS",
                    "a reading of your own, with a unit or a range; YOURS is any name or two with a dot, such as `print_speed` or `box.humidity`",
                    List.of(
                            Key.own("unit", "text; `percent`, `permille` and `share` have a range")
                                    .without("none")
                                    .comment("\"mm/s\"", "what to show after the number, which is not converted"),
                            Key.own("range", "two numbers")
                                    .without("what follows it says `from` and `to`")
                                    .comment("[0, 200]", "the values that count as 0 and as 1"),
                            ReadingsSection.SCALE,
                            ReadingsSection.OFFSET))
            .after(SourceKeys.KEYS);

    private final Map<OwnQuantity, List<Bindings.OfReading>> readings = new LinkedHashMap<>();

    private OwnReadings() {}

    /**
     * Reads them.
     *
     * @param table the section {@code [printer.readings]}, after those with known names have been read
     * @return where each is reported, in the order of the file
     */
    static Map<OwnQuantity, List<Bindings.OfReading>> read(Table table) {
        OwnReadings own = new OwnReadings();
        for (String name : unquoted(table.unasked())) {
            if (isReading(table, name)) {
                own.add(name, table, name);
            } else {
                Table thing = table.table(name);
                if (thing.keys().containsAll(List.of(ACTUAL, SETPOINT))) {
                    own.addHeater(new OwnHeater(name), thing, table);
                }
                unquoted(thing.unasked()).forEach(measure -> own.add(name + '.' + measure, thing, measure));
            }
        }
        noteIfMany(table, OwnHeater.among(own.readings.keySet()));
        if (own.readings.size() > MOST) {
            table.mistake(table.keys().get(0), "is one of more than " + MOST + " readings of your own", "remove some");
        }
        return own.readings;
    }

    /** A name with a dot in it was meant to be a dotted key. Nothing reads it, so it is reported as not known. */
    private static List<String> unquoted(List<String> names) {
        return names.stream().filter(name -> !name.contains(".")).toList();
    }

    private static boolean isReading(Table table, String name) {
        return !table.isTable(name)
                || table.table(name).keys().stream()
                        .anyMatch(key -> SECTION.key(key).isPresent());
    }

    private static void noteIfMany(Table table, List<OwnHeater> heaters) {
        if (heaters.size() > MOST_HEATERS) {
            String last = heaters.get(heaters.size() - 1).name();
            table.mistake(last, "is one of more than " + MOST_HEATERS + " heaters of your own", "remove some");
        }
    }

    private void addHeater(OwnHeater heater, Table thing, Table table) {
        noteIfMisspelt(heater.name(), table);
        addOfHeater(heater.actual(), thing, ACTUAL);
        addOfHeater(heater.setpoint(), thing, SETPOINT);
    }

    private static void noteIfMisspelt(String name, Table table) {
        misspelt(name)
                .filter(near -> !table.keys().contains(near))
                .ifPresent(near -> table.mistake(
                        name,
                        "is not a known heater, and " + near + " has no readings",
                        "did you mean " + near + "? If not, choose a name that is less like it"));
    }

    private void addOfHeater(OwnQuantity quantity, Table thing, String measure) {
        readings.put(quantity, ReadingsSection.places(quantity.like().orElseThrow(), thing, measure));
    }

    private void add(String key, Table table, String name) {
        List<Table> places = table.tableOrTables(name);
        if (places.stream().anyMatch(place -> place.as(SECTION).has("unit") || place.has("range"))) {
            noteIfTaken(key, table, name);
            OwnQuantity quantity = quantity(key, places.get(0));
            readings.put(
                    quantity,
                    places.stream().map(place -> binding(place.as(SECTION))).toList());
        } else if (places.stream().allMatch(Table::right)) {
            places.forEach(Table::leaveOut);
            table.mistake(name, "is not a known reading", advice(key));
        }
    }

    private static String advice(String key) {
        return missing(key)
                .map(other -> misspelt(thing(key))
                        .map(near -> "did you mean " + near + key.substring(key.indexOf('.')) + "?")
                        .orElse("give " + other + " too if it is a heater of your own"))
                .or(() -> Nearest.to(key, namesNear(key)).map(near -> "did you mean " + near + "?"))
                .orElse("give it a unit or a range, such as range = [0, 100], if it is a reading of your own");
    }

    /** What is missing for a heater that has only one of the two. */
    private static Optional<String> missing(String key) {
        String measure = key.substring(key.indexOf('.') + 1);
        return switch (measure) {
            case ACTUAL -> Optional.of(thing(key) + '.' + SETPOINT);
            case SETPOINT -> Optional.of(thing(key) + '.' + ACTUAL);
            default -> Optional.empty();
        };
    }

    private static String thing(String key) {
        return key.substring(0, Math.max(0, key.indexOf('.')));
    }

    /** The known heater that is probably meant. {@code nozzle2} or {@code nozzle_left} means a different one. */
    private static Optional<String> misspelt(String name) {
        return Nearest.to(name, KNOWN_HEATERS).filter(near -> !name.startsWith(near));
    }

    /** What a key may mean: all known names, and those that it would have if it belonged to a heater. */
    private static List<String> namesNear(String key) {
        List<String> names = new ArrayList<>(
                Arrays.stream(Quantity.values()).map(Quantity::key).toList());
        if (key.contains(".")) {
            names.add(thing(key) + '.' + ACTUAL);
            names.add(thing(key) + '.' + SETPOINT);
        }
        return names;
    }

    private void noteIfTaken(String key, Table table, String name) {
        boolean ofHeater = Signal.ofOwn(readings.keySet()).stream()
                .anyMatch(signal -> signal.key().equals(key));
        if (ofHeater || FollowKeys.SIGNALS.containsKey(key)) {
            table.mistake(name, "is the name of a signal that Lampwright calculates", "choose another name");
        }
    }

    private static OwnQuantity quantity(String key, Table place) {
        Optional<String> unit = place.as(SECTION).text("unit", WANTED_UNIT);
        unit.filter(text -> text.length() > LONGEST_UNIT)
                .ifPresent(
                        text -> place.mistake("unit", "is longer than " + LONGEST_UNIT + " characters", WANTED_UNIT));
        double full = unit.map(FULL::get).orElse(Double.NaN);
        List<Double> range = range(place);
        return new OwnQuantity(
                key, unit.orElse(""), range.isEmpty() ? full * 0 : range.get(0), range.isEmpty() ? full : range.get(1));
    }

    private static List<Double> range(Table place) {
        List<Double> range = new ArrayList<>(place.numbers("range", -LARGEST, LARGEST));
        if (!place.has("range") || !place.right()) {
            return List.of();
        }
        if (range.size() != 2 || range.get(0).equals(range.get(1))) {
            place.mistake(
                    "range",
                    range.size() == 2 ? "has the same value twice" : "has " + range.size() + " values",
                    "give two that differ, what counts as 0 and what counts as 1, for instance [0, 200]");
            return List.of();
        }
        return range;
    }

    private static Bindings.OfReading binding(Table place) {
        Optional<String> word = place.has("unit") ? place.text("unit", WANTED_UNIT) : Optional.empty();
        place.has("range");
        return new Bindings.OfReading(
                SourceKeys.read(place),
                word.flatMap(OwnReadings::spelled).orElse(Unit.OWN),
                ReadingsSection.scale(place),
                place.get(ReadingsSection.OFFSET));
    }

    /** A unit that may follow a number in several spellings. */
    private static Optional<Unit> spelled(String word) {
        return Arrays.stream(Unit.values())
                .filter(unit ->
                        unit != Unit.OWN && unit.numeric() && unit.word().equals(word))
                .findFirst();
    }
}
