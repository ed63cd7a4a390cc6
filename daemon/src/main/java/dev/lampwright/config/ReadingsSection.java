package dev.lampwright.config;

import dev.lampwright.printer.Binding;
import dev.lampwright.printer.Quantity;
import java.util.EnumMap;
import java.util.Map;

/** The section {@code [printer.readings]}, with a table for each quantity. */
final class ReadingsSection {
    private static final double LARGEST = 1e9;

    private ReadingsSection() {}

    static Map<Quantity, Binding> read(Table table) {
        Map<Quantity, Binding> readings = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            String[] names = quantity.key().split("\\.", 2);
            Table thing = table.table(names[0]);
            if (thing.has(names[1])) {
                readings.put(quantity, binding(thing.table(names[1])));
            }
        }
        return readings;
    }

    private static Binding binding(Table table) {
        Place place = Place.read(table);
        double scale = table.numberIfThere("scale", -LARGEST, LARGEST).orElse(1);
        double offset = table.numberIfThere("offset", -LARGEST, LARGEST).orElse(0);
        if (scale == 0) {
            table.mistake("scale", "is 0, which makes every value the same", "give what to multiply the value by");
        }
        return new Binding(place.topicFilter(), place.path(), scale, offset);
    }
}
