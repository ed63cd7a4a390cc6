package dev.lampwright.cue;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import java.util.Set;

/** When a cue holds. */
public interface Condition {
    /**
     * Whether the condition holds.
     *
     * @param situation what is going on
     * @param before whether it held in the frame before
     * @return true if it holds now
     */
    boolean holds(Situation situation, boolean before);

    /**
     * The printer is in one of some states.
     *
     * @param states which
     * @return the condition
     */
    static Condition state(Set<PrinterState> states) {
        Set<PrinterState> wanted = Set.copyOf(states);
        return (situation, before) -> wanted.contains(situation.state());
    }

    /**
     * A signal is within bounds. Once it is, it may leave them by a margin before the condition ceases to hold, so that a value that
     * wavers at a bound does not switch to and fro. An unknown signal is within no bounds.
     *
     * @param signal which
     * @param above lower bound; negative infinity for none
     * @param below upper bound; infinity for none
     * @param margin 0 or more, in the signal's unit
     * @return the condition
     */
    static Condition signal(Signal signal, double above, double below, double margin) {
        return (situation, before) -> {
            double value = situation.value(signal);
            double slack = before ? margin : 0;
            return value > above - slack && value < below + slack;
        };
    }

    /**
     * The alarm stands somewhere.
     *
     * @param states where
     * @return the condition
     */
    static Condition alarm(Set<AlarmState> states) {
        Set<AlarmState> wanted = Set.copyOf(states);
        return (situation, before) -> wanted.contains(situation.alarm());
    }

    /**
     * An event of the printer is going on.
     *
     * @param name its name in the configuration
     * @return the condition
     */
    static Condition event(String name) {
        return (situation, before) -> situation.event(name);
    }
}
