package dev.lampwright.config;

import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.Fitting;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The section {@code [guard]}: what may be chosen about the limits. */
final class GuardSection {
    /** The key that lifts the flash limit. Its name says what it risks. */
    static final String ALLOW_FLASHING = "allow_flashing_that_can_cause_seizures";

    private static final String DIM_ORDER = "dim_order";
    private static final double QUICKEST_RISE_S = 0.1;
    private static final double SLOWEST_RISE_S = 60;

    private GuardSection() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param fitting what is fitted
     * @return what is chosen
     */
    static GuardSettings read(Table table, Fitting fitting) {
        return new GuardSettings(
                dimOrder(table, fitting),
                table.number("rise_s", QUICKEST_RISE_S, SLOWEST_RISE_S, GuardSettings.USUAL.riseSeconds()),
                table.flag(ALLOW_FLASHING).orElse(GuardSettings.USUAL.allowFlashing()));
    }

    private static Optional<List<String>> dimOrder(Table table, Fitting fitting) {
        if (!table.has(DIM_ORDER)) {
            return GuardSettings.USUAL.dimOrder();
        }
        Map<String, String> known = new LinkedHashMap<>();
        fitting.zones().keySet().forEach(name -> known.put(name, name));
        fitting.dimmerNames().forEach(name -> known.put(name, name));
        List<String> names = table.allNamed(DIM_ORDER, "zone or dimmer", known);
        if (new LinkedHashSet<>(names).size() < names.size()) {
            table.mistake(DIM_ORDER, "has a name twice", "name each zone and each dimmer once at most");
        }
        return Optional.of(names);
    }
}
