package dev.lampwright.protocol;

/** What the controller shows without a host. */
public enum WhenSilent {
    /** Nothing. */
    DARK(0),
    /** The last frame. */
    KEEP(1),
    /** The controller's own link-lost pattern. */
    BEACON(2);

    private static final WhenSilent[] ALL = values();

    private final int code;

    WhenSilent(int code) {
        this.code = code;
    }

    /**
     * The byte that stands for this on the wire.
     *
     * @return 0 to 2
     */
    public int code() {
        return code;
    }

    /**
     * Reads it.
     *
     * @param message the message that contains it
     * @param at offset in the body
     * @return the value
     * @throws MalformedMessageException if it is unknown, or the body is too short for it
     */
    public static WhenSilent read(Message message, int at) throws MalformedMessageException {
        int code = message.u8(at);
        if (code >= ALL.length) {
            throw MalformedMessageException.outOfRange(at);
        }
        return ALL[code];
    }
}
