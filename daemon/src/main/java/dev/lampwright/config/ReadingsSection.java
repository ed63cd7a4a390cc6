package dev.lampwright.config;

import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Unit;
import dev.lampwright.printer.Bindings;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The section {@code [printer.readings]}, with a table, or several in an array, for each quantity. */
final class ReadingsSection {
    private static final double LARGEST = 1e9;
    static final Key<Double> SCALE = Key.number("scale", -LARGEST, LARGEST)
            .otherwise(1.0, "1")
            .comment("0.01", "what to multiply the number by");
    static final Key<Double> OFFSET =
            Key.number("offset", -LARGEST, LARGEST).otherwise(0.0, "0").comment("-1", "what to add to it then");

    /** Where a number is. */
    static final Section SECTION = Section.of(
                    "printer.readings.NAME",
                    "where a number is; NAME is " + names()
                            + "; a heater of yours, such as a second nozzle, has both `HEATER.actual_C` and `HEATER.setpoint_C`, HEATER being any name",
                    Key.own("unit", units())
                            .without("the one in the key")
                            .comment(
                                    "\"percent\"",
                                    "what the number is in; it may be behind the number, as in \"41.5 °C\""),
                    SCALE,
                    OFFSET)
            .after(SourceKeys.KEYS);

    private ReadingsSection() {}

    private static String names() {
        return Arrays.stream(Quantity.values()).map(Quantity::key).collect(Collectors.joining("`, `", "`", "`"));
    }

    private static String units() {
        return Arrays.stream(Unit.values())
                .filter(unit -> unit != Unit.OWN)
                .map(Unit::word)
                .collect(Collectors.joining("`, `", "`", "`"));
    }

    static Map<Quantity, List<Bindings.OfReading>> read(Table table) {
        Map<Quantity, List<Bindings.OfReading>> readings = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            String[] names = quantity.key().split("\\.", 2);
            Table thing = table.table(names[0]);
            if (thing.has(names[1])) {
                readings.put(quantity, places(quantity, thing, names[1]));
            }
        }
        return readings;
    }

    /**
     * Where one quantity is reported.
     *
     * @param quantity what it is, or is read like
     * @param thing the table of the thing that it belongs to, such as {@code bed}
     * @param measure its name there, which exists
     * @return one place or more
     */
    static List<Bindings.OfReading> places(Quantity quantity, Table thing, String measure) {
        return thing.tableOrTables(measure).stream()
                .map(binding -> binding(quantity, binding))
                .toList();
    }

    private static Bindings.OfReading binding(Quantity quantity, Table table) {
        double scale = scale(table.as(SECTION));
        double offset = table.get(OFFSET);
        return new Bindings.OfReading(
                SourceKeys.read(table), table.oneOf("unit", units(quantity)).orElse(Unit.OWN), scale, offset);
    }

    static double scale(Table table) {
        double scale = table.get(SCALE);
        if (scale == 0) {
            table.mistake("scale", "is 0, which makes every value the same", "give what to multiply the value by");
        }
        return scale;
    }

    private static Map<String, Unit> units(Quantity quantity) {
        Map<String, Unit> units = new LinkedHashMap<>();
        Arrays.stream(Unit.values())
                .filter(unit -> unit != Unit.OWN && unit.goesWith(quantity))
                .forEach(unit -> units.put(unit.word(), unit));
        return units;
    }
}
