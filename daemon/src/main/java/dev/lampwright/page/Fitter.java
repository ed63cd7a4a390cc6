package dev.lampwright.page;

import dev.lampwright.engine.Daemon;
import java.util.Optional;

/** Fits lights for people who have the page open. The page only passes requests on to it. Safe for many threads. */
public interface Fitter extends AutoCloseable {
    /**
     * Answers a request whose rights have been checked.
     *
     * @param what follows {@code fit/}
     * @param json the body; empty for none
     * @return the answer
     */
    Bench.Reply answer(String what, String json);

    /** Ends whatever is under way; everything goes dark. */
    @Override
    void close();

    /** Gives each daemon its fitting. */
    interface Maker {
        /** There is none. */
        Maker NONE = (rig, daemon) -> Optional.empty();

        /**
         * Makes one.
         *
         * @param rig name of the rig; empty for the only one
         * @param daemon what runs for it
         * @return its fitting; empty if it has none
         */
        Optional<Fitter> of(String rig, Daemon daemon);
    }
}
