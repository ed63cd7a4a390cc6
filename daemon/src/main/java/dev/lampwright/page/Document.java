package dev.lampwright.page;

import java.io.IOException;
import java.util.Optional;

/** Content that is created when a browser requests it. Safe for many threads. */
interface Document {
    /**
     * Creates it.
     *
     * @param query the part after the question mark; empty if there is none
     * @return the content; empty if there is nothing for that query
     * @throws IOException if something that it needs is not available
     */
    Optional<StaticFile> make(String query) throws IOException;
}
