package dev.lampwright.page;

import dev.lampwright.engine.Daemon;
import java.util.Optional;

/** Where looks are made and tried, for people who have the page open. What it does does not belong to the page. Safe for many threads. */
public interface Bench {
    /** The longest request that carries a recording, in bytes. */
    int LONGEST_RECORDING = 393_216;

    /**
     * Answers a request whose rights have been checked.
     *
     * @param request the request
     * @return the answer
     */
    Reply answer(Request request);

    /**
     * A request.
     *
     * @param method as HTTP has it
     * @param path what follows {@code bench/}
     * @param query what follows the question mark
     * @param body JSON of 64 KiB at most, or of {@link #LONGEST_RECORDING} for a recording; empty for none
     * @param tab the tab's name for itself; empty if it has none
     * @param mayEdit whether whoever asks may save looks
     */
    record Request(String method, String path, String query, String body, String tab, boolean mayEdit) {}

    /**
     * An answer.
     *
     * @param status as HTTP has it
     * @param json an object
     */
    record Reply(int status, String json) {}

    /** Gives each daemon its bench. */
    interface Maker {
        /** There is none. */
        Maker NONE = (rig, daemon) -> Optional.empty();

        /**
         * Makes a bench.
         *
         * @param rig name of the rig; empty for the only one
         * @param daemon what runs for it
         * @return its bench; empty if it has none
         */
        Optional<Bench> of(String rig, Daemon daemon);
    }
}
