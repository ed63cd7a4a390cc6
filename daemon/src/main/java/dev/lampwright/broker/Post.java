package dev.lampwright.broker;

import java.util.Optional;

/** What a connection publishes. */
interface Post {
    /** Queues everything that the broker is to keep again, as needed for a new connection. */
    void again();

    /**
     * Takes the next message.
     *
     * @return empty if none is waiting
     */
    Optional<Outgoing> poll();

    /** Rung for each new message. */
    Bell bell();
}
