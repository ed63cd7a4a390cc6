package dev.lampwright.tool.fit;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds out where a printer says what. */
public interface PrinterFinder {
    /** Finds nothing: the user does it by hand. */
    PrinterFinder BY_HAND = (broker, duration, told) -> Optional.empty();

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
     * @return the file's sections {@code printer.…}, as TOML; empty if nothing was found, which is told
     */
    Optional<String> find(Map<String, String> broker, Duration duration, Told told);
}
