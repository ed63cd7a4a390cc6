package dev.lampwright.fuzz;

import java.io.IOException;
import java.util.List;
import java.util.function.Supplier;

/**
 * One blow of an attack. It can be done again on another rig.
 *
 * @param line what it does, in one line
 * @param action does it; throws an {@link AssertionError} if the answer to it is wrong
 * @param smaller steps that do a part of it each; none if it has no parts
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
