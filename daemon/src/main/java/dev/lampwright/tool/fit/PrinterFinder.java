package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds out where a printer reports what. */
public interface PrinterFinder {
    /** Finds nothing; the user does it by hand. */
    PrinterFinder BY_HAND = (broker, duration, told) -> HeardPrinter.NOTHING;

    /** Receives progress, and can ask to stop. */
    interface Told {
        /**
         * Says something.
         *
         * @param phrases for the user
         */
        void say(List<Phrase> phrases);

        /**
         * Whether listening should end soon.
         *
         * @return true once the user stops the fitting
         */
        boolean ended();
    }

    /**
     * Listens to a broker.
     *
     * @param broker the content of the file's section {@code broker}: {@code url}, and {@code username}, {@code password_file} and
     *     {@code ca_file} if the broker needs them
     * @param duration for how long
     * @param told receives progress
     * @return what was heard; {@link HeardPrinter#NOTHING} if nothing was, which is also reported
     * @throws UnheardException if the broker cannot be reached, or refuses the login
     */
    HeardPrinter find(Map<String, String> broker, Duration duration, Told told) throws UnheardException;

    /**
     * Listens for the next word at the place of the state.
     *
     * @param broker as for {@link #find}
     * @param place where, as in {@link HeardPrinter#place}
     * @param patience how long at most
     * @param told receives progress
     * @return the first word that differs from the one at the beginning; empty if none came
     */
    default Optional<String> nextWord(Map<String, String> broker, String place, Duration patience, Told told) {
        return Optional.empty();
    }
}
