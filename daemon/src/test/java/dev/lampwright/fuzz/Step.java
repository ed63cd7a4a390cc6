package dev.lampwright.fuzz;

import java.io.IOException;
import java.util.List;
import java.util.function.Supplier;

/**
 * One step of an attack. It can be repeated on another rig.
 *
 * @param line its description, in one line
 * @param action runs it; throws an {@link AssertionError} if the answer is wrong
 * @param smaller steps that each do a part of it; empty if it has no parts
 */
record Step(String line, Action action, Supplier<List<Step>> smaller) {
    /** Does something to a daemon. */
    @FunctionalInterface
    interface Action {
        void on(Rig rig) throws IOException;
    }

    /** A step without parts. */
    static Step of(String line, Action action) {
        return new Step(line, action, List::of);
    }

    /** Its line alone, shortened. */
    @Override
    public String toString() {
        return Oddities.shown(line);
    }
}
