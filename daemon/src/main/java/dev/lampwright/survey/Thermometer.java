package dev.lampwright.survey;

import dev.lampwright.printer.Unit;
import java.util.Collection;
import java.util.EnumSet;
import java.util.Set;

/** In which unit temperatures are told: as it stands with the number, or in a name; or else as all that the printer tells together shows. */
final class Thermometer {
    /** No printer's heater goes up to so many °C, and many a nozzle goes beyond in °F. Common practice, no source. */
    private static final double HOTTER_THAN_C = 380;

    private static final double HOTTEST_F = 800;
    private static final Set<Unit> WRITTEN = EnumSet.of(Unit.CELSIUS, Unit.FAHRENHEIT, Unit.KELVIN);

    private final boolean fahrenheit;

    /**
     * Looks at everything that was heard.
     *
     * @param trails all values
     */
    Thermometer(Collection<Trail> trails) {
        fahrenheit = trails.stream().anyMatch(Thermometer::showsFahrenheit);
    }

    private static boolean showsFahrenheit(Trail trail) {
        boolean heater = trail.names().speakOf(Concept.NOZZLE) || trail.names().speakOf(Concept.BED);
        boolean said = trail.unit() == Unit.FAHRENHEIT || isNamed(trail);
        boolean hot = trail.names().speakOf(Concept.NOZZLE)
                && (trail.names().speakOf(Concept.TEMPERATURE) || trail.names().speakOf(Concept.ACTUAL))
                && trail.most() > HOTTER_THAN_C
                && trail.most() < HOTTEST_F;
        return trail.numeric() && heater && (said || hot);
    }

    private static boolean isNamed(Trail trail) {
        return trail.names().speakOf(Concept.FAHRENHEIT) || trail.names().endWith("f");
    }

    /**
     * The unit of a temperature.
     *
     * @param trail what was seen of it
     * @return the unit; {@link Unit#OWN} for °C that is not said
     */
    Unit unit(Trail trail) {
        if (WRITTEN.contains(trail.unit())) {
            return trail.unit();
        }
        return fahrenheit || isNamed(trail) ? Unit.FAHRENHEIT : Unit.OWN;
    }
}
