package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A value that names the unit of the temperatures beside and below it, such as {@code {"unit": "F"}}.
 *
 * @param within the names under which those temperatures stand
 * @param unit their unit
 */
record UnitSign(List<List<String>> within, Unit unit) {
    private static final Map<String, Unit> SIGNS = Map.of(
            "c", Unit.CELSIUS,
            "celsius", Unit.CELSIUS,
            "degc", Unit.CELSIUS,
            "f", Unit.FAHRENHEIT,
            "fahrenheit", Unit.FAHRENHEIT,
            "degf", Unit.FAHRENHEIT,
            "k", Unit.KELVIN,
            "kelvin", Unit.KELVIN);

    /** What a value says of units; nothing if it is called no unit, names no temperature's, or stands beside nothing. */
    static Optional<UnitSign> of(Trail trail) {
        List<List<String>> levels = trail.names().levels();
        int innermost = levels.size() - 1;
        boolean single = !trail.numeric() && trail.words().size() == 1;
        if (innermost < 1 || !single || trail.names().depthOf(Concept.UNIT) != innermost) {
            return Optional.empty();
        }
        String sign = String.join("", Tokens.of(trail.words().get(0)));
        return Optional.ofNullable(SIGNS.get(sign)).map(unit -> new UnitSign(levels.subList(0, innermost), unit));
    }

    /** Whether it holds for a value. */
    boolean holdsFor(Trail trail) {
        List<List<String>> levels = trail.names().levels();
        return levels.size() > within.size() && levels.subList(0, within.size()).equals(within);
    }
}
