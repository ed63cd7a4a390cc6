package dev.lampwright.config;

import dev.lampwright.wiring.Wiring;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The section {@code [wiring.supplies]}: the rating of each supply. A supply is identified by its voltage. */
final class WiredSupplies {
    private static final double LEAST_AMPS = 0.1;
    private static final double MOST_AMPS = 100;
    private static final double MOST_PERCENT = 20;
    private static final double PERCENT = 100;

    /** The value in data sheets of built-in supplies; plug-in ones may be off by 5 % (assumed). */
    private static final double USUAL_PERCENT = 2;

    private static final Key<Double> AMPS =
            Key.number("amps", LEAST_AMPS, MOST_AMPS).example("3", "what it is rated for");
    private static final Key<Double> CONNECTOR = Key.number("connector_A", LEAST_AMPS, MOST_AMPS)
            .comment("5", "header or connector that all on it goes through");

    private static final Key<Double> TOLERANCE = Key.number("tolerance_percent", 0, MOST_PERCENT)
            .without("2, assumed")
            .comment("2", "how far its output may be below its volts; a plug-in supply may have 5");

    /** A supply. */
    static final Section SECTION = Section.of(
            "wiring.supplies.NAME",
            "a supply, known by its volts",
            Key.own("volts", "number, 1 to 60").needed().example("5", "those of the lights on it"),
            AMPS,
            CONNECTOR,
            TOLERANCE);

    private WiredSupplies() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param volts voltage of each existing supply, by its index
     * @param sure whether this list is complete
     * @return the supplies, in the same order; those not in the file, by their voltage alone
     */
    static List<Wiring.Supply> read(Table table, List<Double> volts, boolean sure) {
        Map<Double, Wiring.Supply> told = new LinkedHashMap<>();
        for (String name : table.keys()) {
            Wiring.Supply supply = supply(name, table.table(name).as(SECTION));
            if (table.table(name).right()) {
                note(table.table(name), supply, told, sure ? volts : List.of(supply.volts()));
            }
        }
        List<Wiring.Supply> supplies = new ArrayList<>();
        for (double each : volts) {
            supplies.add(told.getOrDefault(each, unnamed(each)));
        }
        return supplies;
    }

    private static Wiring.Supply supply(String name, Table table) {
        return new Wiring.Supply(
                name,
                table.needNumber("volts", 1, SupplySection.MOST_VOLTS),
                table.get(TOLERANCE.usual(USUAL_PERCENT, Wording.number(USUAL_PERCENT))) / PERCENT,
                table.find(AMPS).map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                table.find(CONNECTOR).map(OptionalDouble::of).orElse(OptionalDouble.empty()));
    }

    private static void note(Table table, Wiring.Supply supply, Map<Double, Wiring.Supply> told, List<Double> volts) {
        String value = "is " + Wording.number(supply.volts());
        if (!volts.contains(supply.volts())) {
            String there = volts.stream().map(Wording::number).collect(Collectors.joining(" or "));
            table.mistake("volts", value + ", but no light is fed with that", "give " + there);
        } else if (told.putIfAbsent(supply.volts(), supply) != null) {
            String other = told.get(supply.volts()).name();
            table.mistake(
                    "volts", value + ", as that of " + other, "give each voltage once: its lights share a supply");
        }
    }

    private static Wiring.Supply unnamed(double volts) {
        String name = Wording.number(volts) + " V";
        return new Wiring.Supply(name, volts, USUAL_PERCENT / PERCENT, OptionalDouble.empty(), OptionalDouble.empty());
    }
}
