package dev.lampwright.broker;

/**
 * The state of the connection to the broker.
 *
 * @param phase the short form
 * @param reason why the connection was last lost or refused, for the user; empty if it was not, or is up
 * @param code identifies the reason for those with texts of their own; empty if it has none
 */
public record BrokerState(Phase phase, String reason, String code) {
    /**
     * A state whose reason has no code.
     *
     * @param phase the short form
     * @param reason why the connection was last lost or refused; empty if it was not, or is up
     */
    public BrokerState(Phase phase, String reason) {
        this(phase, reason, "");
    }

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
