package dev.lampwright.broker;

/**
 * The state of the connection to the broker.
 *
 * @param phase the short form
 * @param reason why the connection was last lost or refused, for the user; empty if it was not, or is up
 */
public record BrokerState(Phase phase, String reason) {
    /** The state in short. */
    public enum Phase {
        /** An attempt is under way. */
        CONNECTING,
        /** Connected, and subscribed to every topic that the broker grants. */
        CONNECTED,
        /** Not connected; the next attempt is automatic, unless this client has been closed. */
        LOST
    }
}
