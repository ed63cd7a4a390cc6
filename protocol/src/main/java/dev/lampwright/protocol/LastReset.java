package dev.lampwright.protocol;

import java.util.Locale;

/** The cause of a controller's last start, in {@code HERE}. */
public enum LastReset {
    /** Not reported, or unknown to this version. */
    UNKNOWN(0, "for a reason it does not tell"),
    /** Its supply came on. */
    POWER(1, "when its supply came on"),
    /** Its reset button or line; opening the port does the same on many boards. */
    BUTTON(2, "by its reset line"),
    /** Its supply voltage was too low. */
    BROWN_OUT(3, "because its supply voltage fell too low"),
    /** Its program hung. */
    WATCHDOG(4, "by its watchdog because its program hung");

    private static final LastReset[] ALL = values();

    private final int code;
    private final String words;

    LastReset(int code, String words) {
        this.code = code;
        this.words = words;
    }

    /**
     * The byte that stands for this on the wire.
     *
     * @return 0 to 4
     */
    public int code() {
        return code;
    }

    /**
     * The cause for programs.
     *
     * @return for example {@code brown_out}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Why the controller started, to follow <em>it started</em>.
     *
     * @return a few words
     */
    public String words() {
        return words;
    }

    /**
     * Whether this is a sign of something wrong with the board or its supply.
     *
     * @return true for a brown-out and the watchdog
     */
    public boolean isTrouble() {
        return this == BROWN_OUT || this == WATCHDOG;
    }

    /**
     * The cause for a byte.
     *
     * @param code 0 to 255
     * @return the cause, or {@link #UNKNOWN}
     */
    public static LastReset of(int code) {
        return code < ALL.length ? ALL[code] : UNKNOWN;
    }
}
