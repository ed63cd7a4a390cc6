package dev.lampwright.protocol;

/** What the controller shows when no host speaks to it. */
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
     * Reads one.
     *
     * @param message where it stands
     * @param at offset in the body
     * @return what the byte stands for
     * @throws MalformedMessageException if it stands for nothing, or the body is too short for it
     */
    public static WhenSilent read(Message message, int at) throws MalformedMessageException {
        int code = message.u8(at);
        if (code >= ALL.length) {
            throw MalformedMessageException.outOfRange(at);
        }
        return ALL[code];
    }
}
