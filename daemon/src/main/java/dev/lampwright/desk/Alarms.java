package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The state of each printer's alarm, and which of them an ask means.
 *
 * @param all at least one; one without a name is the only one
 */
record Alarms(List<Desk.Alarm> all) {
    /** Keeps a copy of the list. */
    Alarms {
        all = List.copyOf(all);
    }

    /** Whether any alarm is on. */
    boolean isOn() {
        return all.stream().anyMatch(alarm -> alarm.state() != AlarmState.NORMAL);
    }

    /**
     * The printer whose fault an ask acknowledges.
     *
     * @param name the name that was given; empty for none
     * @return its name
     * @throws RefusedException if there is no such fault, or more than one
     */
    String toAcknowledge(Optional<String> name) throws RefusedException {
        Desk.Alarm meant = meant(name, alarm -> alarm.state() == AlarmState.ALERT);
        if (meant.state() != AlarmState.ALERT) {
            throw new RefusedException(Reason.NO_FAULT_TO_ACKNOWLEDGE);
        }
        return meant.printer();
    }

    /**
     * The printer whose alarm an ask resets.
     *
     * @param name the name that was given; empty for none
     * @return its name
     * @throws RefusedException if there is nothing to reset, or it is too soon, or there is more than one
     */
    String toReset(Optional<String> name) throws RefusedException {
        Desk.Alarm meant = meant(name, Alarms::canBeReset);
        if (meant.state() == AlarmState.NORMAL) {
            throw new RefusedException(Reason.NO_FAULT_TO_RESET);
        }
        if (meant.state() == AlarmState.ALERT) {
            throw new RefusedException(Reason.NOT_ACKNOWLEDGED);
        }
        if (meant.faultLasts()) {
            throw new RefusedException(Reason.FAULT_LASTS);
        }
        return meant.printer();
    }

    private static boolean canBeReset(Desk.Alarm alarm) {
        boolean seen = alarm.state() == AlarmState.ACKNOWLEDGED || alarm.state() == AlarmState.RINGBACK;
        return seen && !alarm.faultLasts();
    }

    /** The one that is named, or else the only one that allows it, or else the one that best explains why none does. */
    private Desk.Alarm meant(Optional<String> name, Predicate<Desk.Alarm> able) throws RefusedException {
        if (all.get(0).printer().isEmpty()) {
            return all.get(0);
        }
        if (name.isPresent()) {
            return named(name.get());
        }
        List<Desk.Alarm> possible = all.stream().filter(able).toList();
        if (possible.size() > 1) {
            throw new RefusedException(Reason.SEVERAL_FAULTS, names(possible));
        }
        return possible.stream()
                .findFirst()
                .or(() -> all.stream()
                        .filter(alarm -> alarm.state() != AlarmState.NORMAL)
                        .findFirst())
                .orElse(all.get(0));
    }

    private Desk.Alarm named(String name) throws RefusedException {
        return all.stream()
                .filter(alarm -> alarm.printer().equals(name))
                .findFirst()
                .orElseThrow(() -> new RefusedException(Reason.UNKNOWN_PRINTER, Request.shown(name), names(all)));
    }

    private static String names(List<Desk.Alarm> alarms) {
        return String.join(", ", alarms.stream().map(Desk.Alarm::printer).toList());
    }
}
