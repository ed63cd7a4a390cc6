package dev.lampwright.page;

import dev.lampwright.config.TokenFiles;
import dev.lampwright.engine.Daemon;
import java.util.Optional;

/** Fits lights for people who have the page open. The page only passes requests on to it. Safe for many threads. */
public interface Fitter extends AutoCloseable {
    /**
     * Answers a request whose rights have been checked.
     *
     * @param what follows {@code fit/}
     * @param json the body; empty for none
     * @param elsewhere whether it comes from another computer
     * @return the answer
     */
    Bench.Reply answer(String what, String json, boolean elsewhere);

    /**
     * The tokens of the page that opens after a first fitting, if it has made some.
     *
     * @return files with them; none until the configuration is written
     */
    default TokenFiles nextTokens() {
        return TokenFiles.NONE;
    }

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
