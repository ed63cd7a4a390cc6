package dev.lampwright.protocol;

/** What a controller can complain about. {@link #OTHER} stands for unknown codes. */
public enum Complaint {
    /** A code that this version does not know. */
    OTHER(0, "a reason this version does not know"),
    /** Checksum or COBS; not an answer. */
    BROKEN(1, "a broken packet"),
    /** The packet was longer than allowed; not an answer. */
    TOO_LONG(2, "a packet longer than it takes"),
    /** Unknown type. */
    UNKNOWN_TYPE(3, "a message it does not know"),
    /** Unsupported version. */
    VERSION(4, "a version of the wire it does not speak"),
    /** A frame before the first set-up. */
    NOT_SET_UP(5, "a frame before it was set up"),
    /** The body has the wrong length. */
    LENGTH(6, "a message of the wrong length"),
    /** A field is out of its range. */
    VALUE(7, "a value it cannot take"),
    /** A part does not start where the previous one ended. */
    PART_ORDER(8, "a part of a frame out of order"),
    /** The dark strip alone is over the ceiling; not an answer. */
    CEILING_BELOW_DARK(9, "a ceiling below what the dark strip draws");

    private static final Complaint[] ALL = values();

    private final int code;
    private final String words;

    Complaint(int code, String words) {
        this.code = code;
        this.words = words;
    }

    /**
     * The complaint in words, to follow <em>the controller refused</em>.
     *
     * @return a few words
     */
    public String words() {
        return words;
    }

    /**
     * Whether this answers the message whose sequence number it carries, and so gives its credit back.
     *
     * @return false for those that are not answers
     */
    public boolean isAnswer() {
        return this != BROKEN && this != TOO_LONG && this != CEILING_BELOW_DARK;
    }

    /**
     * The complaint for a code.
     *
     * @param code 0 to 255
     * @return the complaint, or {@link #OTHER}
     */
    public static Complaint of(int code) {
        return code < ALL.length ? ALL[code] : OTHER;
    }

    /**
     * Writes it.
     *
     * @param writer where to write
     * @param sequence sequence number of the message complained of
     * @param detail 0 to 65535
     * @return bytes of the writer's wire
     */
    public int write(MessageWriter writer, int sequence, int detail) {
        return writer.begin(MessageType.COMPLAINT, sequence)
                .u8(code)
                .u16(detail)
                .finish();
    }
}
