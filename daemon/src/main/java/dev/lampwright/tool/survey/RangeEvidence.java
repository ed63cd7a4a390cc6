package dev.lampwright.tool.survey;

import java.util.Optional;

/** The numbers that a value takes. */
final class RangeEvidence implements Evidence {
    private static final double COLDEST_C = -30;
    private static final double SURPLUS_C = 30;

    /** Rooms with printers are warmer; a value that goes lower is not a heater's temperature, or a count. Common practice, no source. */
    private static final double COLDEST_ROOM_C = 3;

    private final Thermometer thermometer;

    RangeEvidence(Thermometer thermometer) {
        this.thermometer = thermometer;
    }

    @Override
    public Clue weigh(Trail trail, Role role) {
        if (!trail.numeric()) {
            return Clue.NONE;
        }
        Optional<HeatedPart> heater = HeatedPart.of(role);
        if (heater.isPresent()) {
            return role == heater.get().target() ? target(trail, heater.get()) : actual(trail, heater.get());
        }
        boolean impossible = trail.least() < -0.01 || (role == Role.PROGRESS && UnitGuess.isBeyond(trail));
        if (impossible) {
            return Clue.against(9);
        }
        boolean whole = trail.least() == 0 && (trail.most() == 100 || trail.most() == 1 || trail.most() == 1000);
        return whole && role == Role.PROGRESS
                ? new Clue(1.5, "goes from 0 to " + NumberText.number(trail.most()))
                : Clue.NONE;
    }

    private Clue actual(Trail trail, HeatedPart heater) {
        Gauge unit = thermometer.gauge(trail);
        double least = unit.toOwn(trail.least());
        double most = unit.toOwn(trail.most());
        if (least < COLDEST_C || most > heater.mostC() + SURPLUS_C) {
            return Clue.against(6);
        }
        if (most == 0) {
            return Clue.against(1);
        }
        if (least < COLDEST_ROOM_C) {
            return Clue.against(3);
        }
        boolean heated = most >= heater.leastC() + 5;
        return heated
                ? new Clue(heater == HeatedPart.NOZZLE ? 1.5 : 0.8, "goes up to " + NumberText.number(most) + " °C")
                : Clue.NONE;
    }

    private Clue target(Trail trail, HeatedPart heater) {
        Gauge unit = thermometer.gauge(trail);
        double most = trail.most() == 0 ? 0 : unit.toOwn(trail.most());
        if (trail.least() < 0 || most > heater.mostC()) {
            return Clue.against(6);
        }
        if (most == 0) {
            return Clue.NONE;
        }
        return most < heater.leastC() ? Clue.against(3) : new Clue(1, "is set to " + NumberText.number(most) + " °C");
    }
}
