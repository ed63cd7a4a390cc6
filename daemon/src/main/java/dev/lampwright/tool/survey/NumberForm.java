package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The unit and range of a number that has no role.
 *
 * @param unit the unit for the configuration; empty for none
 * @param range what counts as 0 and what as 1; empty if that is open or follows from the unit
 * @param certain whether there is no doubt
 * @param reason why, or what is uncertain, worded for the user
 */
record NumberForm(String unit, List<Double> range, boolean certain, String reason) {
    /** The unit that has the range from 0 to 100. */
    static final String PERCENT = Unit.PERCENT.word();

    /** Words at the end of a name that are a unit, and how it is written. Common practice, no source. */
    private static final Map<List<String>, String> UNITS = Map.ofEntries(
            Map.entry(List.of("percent"), PERCENT),
            Map.entry(List.of("pct"), PERCENT),
            Map.entry(List.of("perc"), PERCENT),
            Map.entry(List.of("rh"), PERCENT),
            Map.entry(List.of("prozent"), PERCENT),
            Map.entry(List.of("permille"), "permille"),
            Map.entry(List.of("rpm"), "rpm"),
            Map.entry(List.of("mm", "s"), "mm/s"),
            Map.entry(List.of("mms"), "mm/s"),
            Map.entry(List.of("mm", "per", "s"), "mm/s"),
            Map.entry(List.of("mm", "min"), "mm/min"),
            Map.entry(List.of("mm"), "mm"),
            Map.entry(List.of("m"), "m"),
            Map.entry(List.of("meters"), "m"),
            Map.entry(List.of("g"), "g"),
            Map.entry(List.of("grams"), "g"),
            Map.entry(List.of("gramm"), "g"),
            Map.entry(List.of("kg"), "kg"),
            Map.entry(List.of("w"), "W"),
            Map.entry(List.of("watts"), "W"),
            Map.entry(List.of("watt"), "W"),
            Map.entry(List.of("kw"), "kW"),
            Map.entry(List.of("v"), "V"),
            Map.entry(List.of("volts"), "V"),
            Map.entry(List.of("volt"), "V"),
            Map.entry(List.of("a"), "A"),
            Map.entry(List.of("amps"), "A"),
            Map.entry(List.of("ma"), "mA"),
            Map.entry(List.of("hz"), "Hz"),
            Map.entry(List.of("hpa"), "hPa"),
            Map.entry(List.of("bar"), "bar"),
            Map.entry(List.of("ppm"), "ppm"),
            Map.entry(List.of("dbm"), "dBm"),
            Map.entry(List.of("lux"), "lx"));

    private static final int MOST_WORDS = 3;

    /** Keeps a copy of the list. */
    NumberForm {
        range = List.copyOf(range);
    }

    /** One without doubt, in a unit. */
    static NumberForm sure(String unit, String reason) {
        return new NumberForm(unit, List.of(), true, reason);
    }

    /** One without doubt, from 0 to a number. */
    static NumberForm sure(String unit, double full, String reason) {
        return new NumberForm(unit, List.of(0.0, full), true, reason);
    }

    /** One whose unit is a guess. */
    static NumberForm open(String unit, String what) {
        return new NumberForm(unit, List.of(), false, what);
    }

    /** The same, with a range; a reading in percent that ends at 100 has it already. */
    NumberForm upTo(double full) {
        return new NumberForm(unit, List.of(0.0, full), certain, reason);
    }

    /** The same, marked as a guess. */
    NumberForm doubted(String what) {
        return new NumberForm(unit, range, false, what);
    }

    /** The unit reported after a number, or at the end of its name. */
    static Optional<String> told(Trail trail, List<String> words) {
        if (trail.unit() == Unit.PERCENT) {
            return Optional.of(PERCENT);
        }
        int count = unitWords(words);
        return count == 0
                ? Optional.empty()
                : Optional.of(UNITS.get(words.subList(words.size() - count, words.size())));
    }

    /** How many words at the end of a name are its unit; a name that is nothing but a unit has none. */
    static int unitWords(List<String> words) {
        for (int count = Math.min(MOST_WORDS, words.size() - 1); count > 0; count--) {
            if (UNITS.containsKey(words.subList(words.size() - count, words.size()))) {
                return count;
            }
        }
        return 0;
    }
}
