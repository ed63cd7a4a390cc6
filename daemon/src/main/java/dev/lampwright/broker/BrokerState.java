package dev.lampwright.broker;

/**
 * How things stand with the broker.
 *
 * @param phase in short
 * @param reason why the connection was last lost or refused, for the user; empty if it was not, or is there
 */
public record BrokerState(Phase phase, String reason) {
    /** How things stand, in short. */
    public enum Phase {
        /** An attempt is under way. */
        CONNECTING,
        /** Connected, and subscribed to every topic that the broker grants. */
        CONNECTED,
        /** Not connected; the next attempt comes by itself, unless this client has been closed. */
        LOST
    }
}
