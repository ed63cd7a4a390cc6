package dev.lampwright.broker;

import java.util.Optional;

/** What a connection publishes. */
interface Post {
    /** Queues the newest retained messages again, which a new connection needs. */
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
