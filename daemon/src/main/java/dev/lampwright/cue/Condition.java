package dev.lampwright.cue;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;
import java.util.Set;

/** When a cue holds. A value: what held before is remembered by the {@link Cue}. */
public sealed interface Condition {
    /**
     * Whether the condition holds.
     *
     * @param situation what is going on
     * @param before whether it held in the frame before
     * @return true if it holds now
     */
    boolean holds(Situation situation, boolean before);

    /**
     * How long it stays as it is, if nothing new is heard and nobody asks for anything.
     *
     * @param situation what is going on
     * @return ns: 0 if it may change
     */
    default long stillFor(Situation situation) {
        return Signals.FOREVER;
    }

    /**
     * The printer is in one of some states.
     *
     * @param states which
     */
    record InState(Set<PrinterState> states) implements Condition {
        /** Keeps a copy of the set. */
        public InState {
            states = Set.copyOf(states);
        }

        @Override
        public boolean holds(Situation situation, boolean before) {
            return states.contains(situation.state());
        }
    }

    /**
     * A signal is within bounds. Once it is, it may leave them by a margin before the condition ceases to hold, so that a value that
     * wavers at a bound does not switch to and fro. An unknown signal is within no bounds.
     *
     * @param signal which
     * @param above lower bound; negative infinity for none
     * @param below upper bound; infinity for none
     * @param margin 0 or more, in the signal's unit
     */
    record WithinBounds(Signal signal, double above, double below, double margin) implements Condition {
        /**
         * Checks the margin.
         *
         * @throws IllegalArgumentException if it is below 0
         */
        public WithinBounds {
            if (!(margin >= 0)) {
                throw new IllegalArgumentException("a margin of " + margin + "; give 0 or more");
            }
        }

        @Override
        public boolean holds(Situation situation, boolean before) {
            double value = situation.value(signal);
            double slack = before ? margin : 0;
            return value > above - slack && value < below + slack;
        }

        @Override
        public long stillFor(Situation situation) {
            return situation.stillFor(signal);
        }
    }

    /**
     * The alarm is in one of some states.
     *
     * @param states which
     */
    record InAlarm(Set<AlarmState> states) implements Condition {
        /** Keeps a copy of the set. */
        public InAlarm {
            states = Set.copyOf(states);
        }

        @Override
        public boolean holds(Situation situation, boolean before) {
            return states.contains(situation.alarm());
        }
    }

    /**
     * An event of the printer is going on.
     *
     * @param event its name in the configuration
     */
    record DuringEvent(String event) implements Condition {
        @Override
        public boolean holds(Situation situation, boolean before) {
            return situation.event(event);
        }

        @Override
        public long stillFor(Situation situation) {
            return situation.eventStillFor(event);
        }
    }
}
