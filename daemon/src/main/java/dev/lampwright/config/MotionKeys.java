package dev.lampwright.config;

import dev.lampwright.look.Motion;
import java.util.List;

/** The keys of movement; a layer has at most one. */
final class MotionKeys {
    /** Their names. */
    static final List<String> NAMES = List.of("speed_px_per_s", "speed_zones_per_s", "cycle_s");

    private static final double FASTEST_PIXELS = 1000;
    private static final double FASTEST_ZONES = 2;
    private static final double SHORTEST_CYCLE_S = 1 / FASTEST_ZONES;
    private static final double LONGEST_CYCLE_S = 86_400;

    private static final String FOR_MOVEMENT = "paint = \"ramp\" or extent = \"band\"";
    private static final Key<Boolean> BACK_AND_FORTH = Key.flag("back_and_forth")
            .otherwise(false, "false: what leaves at one end comes in at the other")
            .with(FOR_MOVEMENT)
            .comment("true", "turns at the ends; a ramp then goes from its first colours to its last and back");

    /** The keys of movement; a layer has at most one. Below 0 it moves towards the beginning of the zone. */
    static final List<Key<?>> KEYS = List.of(
            Key.number(NAMES.get(0), -FASTEST_PIXELS, FASTEST_PIXELS)
                    .with(FOR_MOVEMENT)
                    .without("it does not move")
                    .comment("2", "pixels in a second; below 0 towards where the zone begins"),
            Key.number(NAMES.get(1), -FASTEST_ZONES, FASTEST_ZONES)
                    .with(FOR_MOVEMENT)
                    .without("it does not move")
                    .comment("0.5", "lengths of the zone in a second"),
            Key.number(NAMES.get(2), -LONGEST_CYCLE_S, LONGEST_CYCLE_S)
                    .with(FOR_MOVEMENT)
                    .without("it does not move")
                    .comment("3", "seconds from one end of the zone to the other, 0.5 or more"),
            BACK_AND_FORTH);

    private MotionKeys() {}

    static Motion read(Table table) {
        List<String> given = NAMES.stream().filter(table::has).toList();
        if (given.size() > 1) {
            table.mistake(
                    given.get(1),
                    new MistakeText(
                                    "second_movement",
                                    "is a second movement in addition to " + given.get(0),
                                    "keep one of the two")
                            .with("other", given.get(0)));
        }
        if (given.isEmpty()) {
            noteIfNothingTurns(table);
            return Motion.STILL;
        }
        Motion motion = along(table, given);
        return table.get(BACK_AND_FORTH) ? motion.turning() : motion;
    }

    private static void noteIfNothingTurns(Table table) {
        if (table.has(BACK_AND_FORTH.name())) {
            table.mistake(
                    BACK_AND_FORTH.name(),
                    new MistakeText(
                            "no_movement", "has no movement to turn", "give cycle_s or a speed too, or remove it"));
        }
    }

    private static Motion along(Table table, List<String> given) {
        return switch (given.get(0)) {
            case "speed_px_per_s" -> speed(table, given.get(0), FASTEST_PIXELS, Motion.Unit.PIXELS_A_SECOND);
            case "speed_zones_per_s" -> speed(table, given.get(0), FASTEST_ZONES, Motion.Unit.ZONES_A_SECOND);
            default -> cycle(table, given.get(0));
        };
    }

    private static Motion speed(Table table, String key, double fastest, Motion.Unit unit) {
        return new Motion(table.numberIfThere(key, -fastest, fastest).orElse(0), unit);
    }

    private static Motion cycle(Table table, String key) {
        double seconds =
                table.numberIfThere(key, -LONGEST_CYCLE_S, LONGEST_CYCLE_S).orElse(1);
        if (Math.abs(seconds) < SHORTEST_CYCLE_S) {
            table.mistake(
                    key,
                    new MistakeText(
                                    "cycle_too_short",
                                    "is " + Wording.number(seconds) + ", less than " + SHORTEST_CYCLE_S + " s",
                                    "give the seconds from one end of the zone to the other; below 0 to go the other"
                                            + " way")
                            .with("value", seconds)
                            .with("low", SHORTEST_CYCLE_S));
            return Motion.STILL;
        }
        return Motion.cycle(seconds);
    }
}
