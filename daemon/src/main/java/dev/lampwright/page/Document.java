package dev.lampwright.page;

import java.io.IOException;
import java.util.Optional;

/** Something that is made when a browser asks for it. Safe for many threads. */
interface Document {
    /**
     * Makes it.
     *
     * @param query what follows the question mark; empty if nothing does
     * @return the content; empty if there is nothing by that query
     * @throws IOException if something that it needs cannot be had
     */
    Optional<StaticFile> make(String query) throws IOException;
}
