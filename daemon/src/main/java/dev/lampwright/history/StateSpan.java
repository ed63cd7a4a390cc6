package dev.lampwright.history;

import dev.lampwright.printer.PrinterState;

/**
 * A time during which the printer was in one state. A gap between two spans was not observed.
 *
 * @param state which
 * @param from its beginning
 * @param to its end, or the last time that it was seen
 */
public record StateSpan(PrinterState state, Stamp from, Stamp to) {
    /** The same, lasting longer. */
    StateSpan to(Stamp end) {
        return new StateSpan(state, from, end);
    }

    /** The same with times on the wall clock. */
    StateSpan wall(long wallAhead) {
        return new StateSpan(state, from.wall(wallAhead), to.wall(wallAhead));
    }

    /** Whether another starts where this ends. */
    boolean meets(StateSpan next) {
        return to.equals(next.from);
    }

    long millis() {
        return to.millis() - from.millis();
    }
}
