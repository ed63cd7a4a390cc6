package dev.lampwright.service;

import java.io.IOException;

/** Sends datagrams to one place. */
interface Datagrams extends AutoCloseable {
    /**
     * Sends one, without waiting for room.
     *
     * @param text in UTF-8 on the wire
     * @throws IOException if it cannot be sent now; the next may
     */
    void send(String text) throws IOException;

    @Override
    void close();
}
