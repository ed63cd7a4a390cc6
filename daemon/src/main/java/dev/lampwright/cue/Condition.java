package dev.lampwright.cue;

import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** When a cue holds. A value: the {@link Cue} remembers what held before. */
public sealed interface Condition {
    /**
     * Whether the condition holds.
     *
     * @param situation the current situation
     * @param before whether it held in the previous frame
     * @return true if it holds now
     */
    boolean holds(Situation situation, boolean before);

    /**
     * How long the result stays the same, if nothing new is heard and nobody asks for anything.
     *
     * @param situation the current situation
     * @return ns: 0 if it may change
     */
    default long stillFor(Situation situation) {
        return Signals.FOREVER;
    }

    /**
     * The states of printers with which the condition may hold.
     *
     * @return empty if it does not depend on states
     */
    default Set<PrinterState> states() {
        return Set.of();
    }

    /**
     * The printer is in one of several states.
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
     * A signal is within bounds. Once it is, it may leave them by a margin before the condition stops holding, so that a value that
     * fluctuates around a bound does not switch back and forth. An unknown signal is within no bounds.
     *
     * @param signal which
     * @param above lower bound; negative infinity if none
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
     * The alarm is in one of several states.
     *
     * @param alarms which
     */
    record InAlarm(Set<AlarmState> alarms) implements Condition {
        /** Keeps a copy of the set. */
        public InAlarm {
            alarms = Set.copyOf(alarms);
        }

        @Override
        public boolean holds(Situation situation, boolean before) {
            return alarms.contains(situation.alarm());
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

    /**
     * One of several printers, whichever this view shows, is in one of several states.
     *
     * @param printer its place among the printers, from 0
     * @param states which
     */
    record PrinterIn(int printer, Set<PrinterState> states) implements Condition {
        /** Keeps a copy of the set. */
        public PrinterIn {
            states = Set.copyOf(states);
        }

        @Override
        public boolean holds(Situation situation, boolean before) {
            return states.contains(situation.printers()[printer]);
        }
    }

    /**
     * At least one printer is in one of several states.
     *
     * @param states which
     */
    record AnyIn(Set<PrinterState> states) implements Condition {
        /** Keeps a copy of the set. */
        public AnyIn {
            states = Set.copyOf(states);
        }

        @Override
        public boolean holds(Situation situation, boolean before) {
            for (PrinterState state : situation.printers()) {
                if (states.contains(state)) {
                    return true;
                }
            }
            return false;
        }
    }

    /**
     * Every printer is in one of several states.
     *
     * @param states which
     */
    record AllIn(Set<PrinterState> states) implements Condition {
        /** Keeps a copy of the set. */
        public AllIn {
            states = Set.copyOf(states);
        }

        @Override
        public boolean holds(Situation situation, boolean before) {
            for (PrinterState state : situation.printers()) {
                if (!states.contains(state)) {
                    return false;
                }
            }
            return true;
        }
    }

    /**
     * It applies to one view only.
     *
     * @param view its name
     */
    record InView(String view) implements Condition {
        @Override
        public boolean holds(Situation situation, boolean before) {
            return view.equals(situation.view());
        }
    }

    /**
     * At least one of some conditions holds.
     *
     * @param conditions about states alone
     */
    record OneOf(List<Condition> conditions) implements Condition {
        /** Keeps a copy of the list. */
        public OneOf {
            conditions = List.copyOf(conditions);
        }

        /**
         * One condition for several states.
         *
         * @param states the states, each an {@link InState} or a {@link PrinterIn}; at least one
         * @return a single condition if all are about the printer that is shown
         */
        public static Condition of(List<Condition> states) {
            Set<PrinterState> shown = EnumSet.noneOf(PrinterState.class);
            List<Condition> others = new ArrayList<>();
            for (Condition state : states) {
                if (state instanceof InState) {
                    shown.addAll(state.states());
                } else {
                    others.add(state);
                }
            }
            if (!shown.isEmpty()) {
                others.add(0, new InState(shown));
            }
            return others.size() == 1 ? others.get(0) : new OneOf(others);
        }

        @Override
        public Set<PrinterState> states() {
            Set<PrinterState> all = EnumSet.noneOf(PrinterState.class);
            conditions.forEach(condition -> all.addAll(condition.states()));
            return all;
        }

        @Override
        public boolean holds(Situation situation, boolean before) {
            for (int i = 0; i < conditions.size(); i++) {
                if (conditions.get(i).holds(situation, before)) {
                    return true;
                }
            }
            return false;
        }
    }
}
