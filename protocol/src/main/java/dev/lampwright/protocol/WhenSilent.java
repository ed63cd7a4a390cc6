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
     * What a byte stands for.
     *
     * @param code 0 to 255
     * @param at where in the body it stands, for the complaint
     * @return what it stands for
     * @throws MalformedMessageException if it stands for nothing
     */
    static WhenSilent of(int code, int at) throws MalformedMessageException {
        if (code >= ALL.length) {
            throw MalformedMessageException.outOfRange(at);
        }
        return ALL[code];
    }
}
