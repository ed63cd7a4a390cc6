package dev.lampwright.protocol;

/** How a frame or a part of one was processed, in {@code SHOWN}. */
public enum Shown {
    /** A part was accepted; more will follow. */
    TAKEN(0),
    /** The frame is shown as sent. */
    WHOLE(1),
    /** The frame is shown, dimmed by the controller to keep the ceiling. */
    DIMMED(2),
    /** The host said goodbye. */
    RESTING(3);

    /** The offset of the counter of broken packets in the body. */
    public static final int BROKEN_AT = 1;
    /** The offset of the counter of overruns in the body. */
    public static final int OVERRUNS_AT = 3;
    /** The offset of the counter of dimmed frames in the body. */
    public static final int DIMMED_AT = 5;

    private static final Shown[] ALL = values();

    private final int code;

    Shown(int code) {
        this.code = code;
    }

    /**
     * Reads the first byte of the body.
     *
     * @param message a {@code SHOWN}
     * @return its meaning
     * @throws MalformedMessageException if the body is empty or the byte unknown
     */
    public static Shown read(Message message) throws MalformedMessageException {
        int value = message.u8(0);
        if (value >= ALL.length) {
            throw MalformedMessageException.outOfRange(0);
        }
        return ALL[value];
    }

    /**
     * Writes it with the controller's counters.
     *
     * @param writer where to write
     * @param sequence sequence number of the message answered
     * @param broken broken packets so far; only the low sixteen bits count, as for the others
     * @param overruns overruns so far
     * @param dimmed frames dimmed so far
     * @return bytes of the writer's wire
     */
    public int write(MessageWriter writer, int sequence, int broken, int overruns, int dimmed) {
        return writer.begin(MessageType.SHOWN, sequence)
                .u8(code)
                .u16(broken)
                .u16(overruns)
                .u16(dimmed)
                .finish();
    }
}
