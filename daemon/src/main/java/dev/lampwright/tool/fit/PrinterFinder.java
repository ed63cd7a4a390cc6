package dev.lampwright.tool.fit;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds out where a printer says what. */
public interface PrinterFinder {
    /** Finds nothing: the user does it by hand. */
    PrinterFinder BY_HAND = (broker, duration, told) -> HeardPrinter.NOTHING;

    /** Who is told how it goes on, and may want it to end. */
    interface Told {
        /**
         * Says something.
         *
         * @param lines for the user
         */
        void say(List<String> lines);

        /**
         * Whether the listening is to end soon.
         *
         * @return true once the user stops the fitting
         */
        boolean ended();
    }

    /**
     * Listens to a broker.
     *
     * @param broker what is in the file's section {@code broker}: {@code url}, and {@code username}, {@code password_file} and
     *     {@code ca_file} where the broker needs them
     * @param duration for how long
     * @param told who is told how it goes on
     * @return what was heard; {@link HeardPrinter#NOTHING} if nothing was, which is also printed
     */
    HeardPrinter find(Map<String, String> broker, Duration duration, Told told);

    /**
     * Listens for the next word at the place of the state.
     *
     * @param broker as for {@link #find}
     * @param place where, as {@link HeardPrinter#place} has it
     * @param patience how long at most
     * @param told who is told how it goes on
     * @return the first word that differs from the one at the beginning; empty if none came
     */
    default Optional<String> nextWord(Map<String, String> broker, String place, Duration patience, Told told) {
        return Optional.empty();
    }
}
