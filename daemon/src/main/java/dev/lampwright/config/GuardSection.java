package dev.lampwright.config;

import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.Fitting;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The section {@code [guard]}: the settings of the limits. */
final class GuardSection {
    /** The key that lifts the flash limit. Its name says what the risk is. */
    static final String ALLOW_FLASHING = "allow_flashing_that_can_cause_seizures";

    private static final String DIM_ORDER = "dim_order";
    private static final Key<Double> RISE = Key.number("rise_s", 0.1, 60)
            .usual(GuardSettings.USUAL.riseSeconds(), Wording.number(GuardSettings.USUAL.riseSeconds()))
            .example("2", "how long dimmed light takes from dark to full again");
    private static final Key<Boolean> FLASHING = Key.flag(ALLOW_FLASHING)
            .otherwise(GuardSettings.USUAL.allowFlashing(), "false")
            .comment("true", "without it, light flashes three times in a second at most");

    /** Limits that apply whatever the looks demand. */
    static final Section SECTION = Section.of(
            "guard",
            "limits that hold whatever the looks ask for",
            Key.own(DIM_ORDER, "names of zones and dimmers")
                    .without("what is neither bed, nozzle nor job first")
                    .example(
                            "[\"glow\", \"sides\"]",
                            "over the ceiling these are dimmed first, one after the other; then all else alike"),
            RISE,
            FLASHING);

    private GuardSection() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param fitting what is fitted
     * @param volts voltage of each supply, by its index
     * @return the settings
     */
    static GuardSettings read(Table table, Fitting fitting, List<Double> volts) {
        return new GuardSettings(dimOrder(table.as(SECTION), fitting), table.get(RISE), table.get(FLASHING), volts);
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
