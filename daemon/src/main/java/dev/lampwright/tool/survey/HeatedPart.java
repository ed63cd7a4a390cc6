package dev.lampwright.tool.survey;

import java.util.List;
import java.util.Optional;

/** What is heated. */
enum HeatedPart {
    BED(Concept.BED, Role.BED_ACTUAL, Role.BED_SETPOINT, 30, 150),
    NOZZLE(Concept.NOZZLE, Role.NOZZLE_ACTUAL, Role.NOZZLE_SETPOINT, 130, 500),
    CHAMBER(Concept.CHAMBER, Role.CHAMBER_ACTUAL, Role.CHAMBER_SETPOINT, 25, 110);

    private final Concept concept;
    private final Role actual;
    private final Role target;
    private final double leastC;
    private final double mostC;

    HeatedPart(Concept concept, Role actual, Role target, double leastC, double mostC) {
        this.concept = concept;
        this.actual = actual;
        this.target = target;
        this.leastC = leastC;
        this.mostC = mostC;
    }

    Concept concept() {
        return concept;
    }

    Role actual() {
        return actual;
    }

    Role target() {
        return target;
    }

    /** The lowest temperature that it is set to, in °C. Common practice, no source. */
    double leastC() {
        return leastC;
    }

    /** The highest temperature that it is set to, in °C. Common practice, no source. */
    double mostC() {
        return mostC;
    }

    /** The others. */
    List<HeatedPart> others() {
        return List.of(values()).stream().filter(heater -> heater != this).toList();
    }

    /** The heater that a role belongs to; empty if the role is not a temperature. */
    static Optional<HeatedPart> of(Role role) {
        return List.of(values()).stream()
                .filter(heater -> heater.actual == role || heater.target == role)
                .findFirst();
    }
}
