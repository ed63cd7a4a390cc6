package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The unit in which temperatures are reported: as given with the number, next to it or in a name; otherwise as shown by everything that the
 * printer reports together.
 */
final class Thermometer {
    /** No printer's heater reaches this many °C, and many nozzles exceed it in °F. Common practice, no source. */
    private static final double HOTTER_THAN_C = 380;

    private static final double HOTTEST_F = 800;

    /** Few nozzles and few beds exceed this in °C, and even fewer do together. Common practice, no source. */
    private static final double HOT_NOZZLE_C = 320;

    private static final double HOT_BED_C = 130;

    /** No room with a printer is colder in °F; in °C, a heater that was ever cold was colder. Common practice, no source. */
    private static final double COLDEST_ROOM_F = 50;

    private static final Set<Unit> WRITTEN = EnumSet.of(Unit.CELSIUS, Unit.FAHRENHEIT, Unit.KELVIN);

    private final List<UnitSign> signs;
    private final boolean said;
    private final boolean hot;
    private final Gauge usual;

    /**
     * Evaluates everything that was heard.
     *
     * @param trails all values
     */
    Thermometer(Collection<Trail> trails) {
        signs = trails.stream().map(UnitSign::of).flatMap(Optional::stream).toList();
        said = trails.stream().anyMatch(this::saysFahrenheit);
        usual = new HeaterScale(trails).gauge();
        hot = usual.equals(Gauge.PLAIN)
                && (trails.stream().anyMatch(trail -> isHot(trail, Concept.NOZZLE, HOTTER_THAN_C))
                        || areHotTogether(trails));
    }

    private boolean saysFahrenheit(Trail trail) {
        return trail.numeric()
                && (speaksMostOf(trail, Concept.NOZZLE) || speaksMostOf(trail, Concept.BED))
                && told(trail).filter(unit -> unit == Unit.FAHRENHEIT).isPresent();
    }

    private static boolean areHotTogether(Collection<Trail> trails) {
        return trails.stream().anyMatch(trail -> isHot(trail, Concept.NOZZLE, HOT_NOZZLE_C))
                && trails.stream().anyMatch(trail -> isHot(trail, Concept.BED, HOT_BED_C))
                && trails.stream().noneMatch(Thermometer::isColdInCelsius);
    }

    private static boolean isHot(Trail trail, Concept heater, double hotterThan) {
        return isTemperatureOf(trail, heater) && trail.most() > hotterThan && trail.most() < HOTTEST_F;
    }

    private static boolean isColdInCelsius(Trail trail) {
        boolean heater = isTemperatureOf(trail, Concept.NOZZLE) || isTemperatureOf(trail, Concept.BED);
        return heater && !trail.names().speakOf(Concept.TARGET) && trail.least() < COLDEST_ROOM_F;
    }

    static boolean isTemperatureOf(Trail trail, Concept heater) {
        ValueName names = trail.names();
        boolean temperature =
                names.speakOf(Concept.TEMPERATURE) || names.speakOf(Concept.ACTUAL) || names.speakOf(Concept.TARGET);
        boolean foreign = names.wholeDepthOf(Concept.FOREIGN) > names.depthOf(heater);
        return trail.numeric() && trail.unit() == Unit.OWN && temperature && !foreign && speaksMostOf(trail, heater);
    }

    private static boolean speaksMostOf(Trail trail, Concept heater) {
        int own = trail.names().depthOf(heater);
        int other = trail.names().depthOf(heater == Concept.BED ? Concept.NOZZLE : Concept.BED);
        return own >= 0 && own >= other;
    }

    private Optional<Unit> told(Trail trail) {
        if (WRITTEN.contains(trail.unit())) {
            return Optional.of(trail.unit());
        }
        return isNamed(trail) ? Optional.of(Unit.FAHRENHEIT) : toldBeside(trail);
    }

    private static boolean isNamed(Trail trail) {
        return trail.names().speakOf(Concept.FAHRENHEIT) || trail.names().endWith("f");
    }

    /** The nearest sign counts. */
    private Optional<Unit> toldBeside(Trail trail) {
        return signs.stream()
                .filter(sign -> sign.holdsFor(trail))
                .max(Comparator.comparingInt(sign -> sign.within().size()))
                .map(UnitSign::unit);
    }

    /**
     * The unit of a temperature.
     *
     * @param trail what was seen of it
     * @return the unit, {@link Unit#OWN} for °C that is not stated; and the scale, for tenths
     */
    Gauge gauge(Trail trail) {
        return told(trail)
                .map(unit -> new Gauge(unit, usual.scale()))
                .orElseGet(() -> said || hot ? Gauge.of(Unit.FAHRENHEIT) : usual);
    }

    /**
     * What is uncertain about the unit of a temperature.
     *
     * @param trail what was seen of it
     * @return a clause for the user; empty if the unit is stated, or is the usual °C
     */
    Optional<String> doubt(Trail trail) {
        if (told(trail).isPresent() || said) {
            return Optional.empty();
        }
        if (hot) {
            return Optional.of("°F is a guess, since the values are unusually high for °C; remove unit if it is °C");
        }
        return usual.equals(Gauge.PLAIN)
                ? Optional.empty()
                : Optional.of(
                        "unit and scale are a guess, since no bed is that hot or cold in °C; remove them if it is °C");
    }

    /**
     * A value that names the unit of the temperatures next to it and below it, such as {@code {"unit": "F"}}.
     *
     * @param within the names under which those temperatures are
     * @param unit their unit
     */
    private record UnitSign(List<List<String>> within, Unit unit) {
        private static final Map<String, Unit> SIGNS = Map.of(
                "c", Unit.CELSIUS,
                "celsius", Unit.CELSIUS,
                "degc", Unit.CELSIUS,
                "f", Unit.FAHRENHEIT,
                "fahrenheit", Unit.FAHRENHEIT,
                "degf", Unit.FAHRENHEIT,
                "k", Unit.KELVIN,
                "kelvin", Unit.KELVIN);

        /**
         * What a value says about units; empty if neither its name nor a degree sign suggests a unit, or a unit of something other than temperature, or
         * nothing is next to it.
         */
        static Optional<UnitSign> of(Trail trail) {
            List<List<String>> levels = trail.names().levels();
            int innermost = levels.size() - 1;
            boolean single = !trail.numeric() && trail.words().size() == 1;
            if (innermost < 1 || !single) {
                return Optional.empty();
            }
            String word = trail.words().get(0).strip();
            if (trail.names().depthOf(Concept.UNIT) != innermost && !isDegrees(word)) {
                return Optional.empty();
            }
            String sign = String.join("", Tokens.of(word));
            return Optional.ofNullable(SIGNS.get(sign)).map(unit -> new UnitSign(levels.subList(0, innermost), unit));
        }

        /** A degree sign is about a temperature, whatever the name. */
        private static boolean isDegrees(String word) {
            return word.length() == 2 && word.charAt(0) == '°';
        }

        /** Whether it applies to a value. */
        boolean holdsFor(Trail trail) {
            List<List<String>> levels = trail.names().levels();
            return levels.size() > within.size()
                    && levels.subList(0, within.size()).equals(within);
        }
    }
}
