package dev.lampwright.broker;

import java.util.List;

/** What a connection is subscribed to. One thread at a time calls these. */
interface Subscriptions {
    /**
     * A new connection is there, and subscribed to nothing yet.
     *
     * @param session to subscribe with
     * @return what the broker refused
     * @throws BrokerException if the connection is of no use
     * @throws InterruptedException if this thread is to end
     */
    List<String> begin(BrokerSession session) throws BrokerException, InterruptedException;

    /** The connection is said to be there. */
    default void begun() {}

    /**
     * Subscribes to what has come to be wanted, and unsubscribes from what is not wanted any more. Called often.
     *
     * @param session to do it with
     * @throws BrokerException if the connection is of no use any more
     * @throws InterruptedException if this thread is to end
     */
    default void follow(BrokerSession session) throws BrokerException, InterruptedException {}

    /** The connection, or the attempt to make it, has ended. */
    default void ended() {}
}
