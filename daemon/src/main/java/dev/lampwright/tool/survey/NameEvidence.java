package dev.lampwright.tool.survey;

import java.util.Optional;

/** What a value is called. If two words contradict each other, the innermost counts. */
final class NameEvidence implements Evidence {
    @Override
    public Clue weigh(Trail trail, Role role) {
        ValueName names = trail.names();
        Optional<HeatedPart> heater = HeatedPart.of(role);
        return heater.isPresent() ? heater(names, heater.get(), role) : other(names, role);
    }

    private static Clue heater(ValueName names, HeatedPart heater, Role role) {
        double weight = 0;
        String reason = "";
        int own = names.depthOf(heater.concept());
        int others = heater.others().stream()
                .mapToInt(other -> names.depthOf(other.concept()))
                .max()
                .orElse(-1);
        if (own > others) {
            weight += 3;
            reason = "“" + names.wordFor(heater.concept()) + "” speaks of the "
                    + heater.concept().word();
        } else if (others > own) {
            weight -= 4;
        }
        weight += names.speakOf(Concept.TEMPERATURE) ? 1 : 0;
        weight -= names.speakOf(Concept.LAYER) || names.speakOf(Concept.PROGRESS) ? 2 : 0;
        Clue side = role == heater.target() ? target(names) : actual(names);
        return new Clue(weight + side.weight(), joined(reason, side.reason()));
    }

    private static Clue target(ValueName names) {
        int target = names.depthOf(Concept.TARGET);
        if (target >= 0 && target >= names.depthOf(Concept.ACTUAL)) {
            return new Clue(2, "“" + names.wordFor(Concept.TARGET) + "” of a target");
        }
        return Clue.against(names.speakOf(Concept.ACTUAL) ? 3 : 0.5);
    }

    private static Clue actual(ValueName names) {
        int actual = names.depthOf(Concept.ACTUAL);
        if (names.depthOf(Concept.TARGET) >= Math.max(0, actual)) {
            return Clue.against(3);
        }
        return actual >= 0 ? new Clue(1.5, "“" + names.wordFor(Concept.ACTUAL) + "” of what is measured") : Clue.NONE;
    }

    private static String joined(String one, String other) {
        return one.isEmpty() || other.isEmpty() ? one + other : one + ", " + other;
    }

    private static Clue other(ValueName names, Role role) {
        return switch (role) {
            case PROGRESS ->
                named(names, Concept.PROGRESS, 3, Concept.LEFT, Concept.ELAPSED, Concept.LAYER, Concept.TOTAL);
            case LEFT ->
                named(names, Concept.LEFT, timed(names, 3), Concept.ELAPSED, Concept.LAYER, Concept.TEMPERATURE);
            case ELAPSED -> named(names, Concept.ELAPSED, timed(names, 3), Concept.LEFT, Concept.TEMPERATURE);
            case DONE ->
                names.speakOf(Concept.FAULT) || isShare(names)
                        ? Clue.against(6)
                        : named(names, Concept.LAYER, 3, Concept.TOTAL, Concept.LEFT);
            case TOTAL -> total(names);
            case STATE -> named(names, Concept.STATE, 2, Concept.FAULT, Concept.CAMERA, Concept.TEXT);
            case FAULT_TEXT -> faultText(names);
            default -> named(names, Concept.CAMERA, 3);
        };
    }

    /** Its own name is of a share, not of a count. */
    static boolean isShare(ValueName names) {
        return names.ownSpeaksOf(Concept.PROGRESS) && !names.speakOf(Concept.LAYER);
    }

    /** A word for the thing; words against it count if they are as far in or further. */
    private static Clue named(ValueName names, Concept wanted, double weight, Concept... against) {
        int depth = names.depthOf(wanted);
        double sum = names.speakOf(Concept.JOB) ? 0.5 : 0;
        for (Concept concept : against) {
            sum -= names.depthOf(concept) >= Math.max(0, depth) ? 3 : 0;
        }
        for (HeatedPart heater : HeatedPart.values()) {
            sum -= names.depthOf(heater.concept()) >= Math.max(0, depth) ? 2 : 0;
        }
        return depth < 0 ? new Clue(sum, "") : new Clue(sum + weight, "“" + names.wordFor(wanted) + "” speaks of it");
    }

    private static double timed(ValueName names, double weight) {
        return names.speakOf(Concept.TIME) ? weight + 1 : weight;
    }

    private static Clue total(ValueName names) {
        Clue layers = named(names, Concept.LAYER, 1.5, Concept.LEFT);
        return names.speakOf(Concept.TOTAL)
                ? new Clue(
                        layers.weight() + 2, joined(layers.reason(), "“" + names.wordFor(Concept.TOTAL) + "” of all"))
                : new Clue(layers.weight() - 1, layers.reason());
    }

    private static Clue faultText(ValueName names) {
        Clue fault = named(names, Concept.FAULT, 3, Concept.CAMERA);
        return names.speakOf(Concept.TEXT) ? new Clue(fault.weight() + 1, fault.reason()) : fault;
    }
}
