package dev.lampwright.protocol;

import java.util.Arrays;

/** The messages of the wire. Those from the controller have the high bit of their code set. */
public enum MessageType {
    /** Any code unknown to this version. */
    UNKNOWN(0),
    /** Host: who is there? */
    HELLO(0x01),
    /** Host: what is fitted, and its limits. */
    SETUP(0x02),
    /** Host: a frame, or a part of one. */
    FRAME(0x03),
    /** Host: goodbye. */
    REST(0x04),
    /** Controller: who it is and what it can do. */
    HERE(0x81),
    /** Controller: the set-up in force. */
    IN_FORCE(0x82),
    /** Controller: a frame or part has been processed. */
    SHOWN(0x83),
    /** Controller: something was refused. */
    COMPLAINT(0x84);

    private static final MessageType[] BY_CODE = byCode();

    private final int code;

    MessageType(int code) {
        this.code = code;
    }

    /**
     * The byte that stands for this type on the wire.
     *
     * @return 0 to 255; 0 for {@link #UNKNOWN}
     */
    public int code() {
        return code;
    }

    /**
     * The type that a byte stands for.
     *
     * @param code 0 to 255
     * @return the type, or {@link #UNKNOWN}
     */
    public static MessageType of(int code) {
        return BY_CODE[code];
    }

    private static MessageType[] byCode() {
        MessageType[] types = new MessageType[256];
        Arrays.fill(types, UNKNOWN);
        for (MessageType type : values()) {
            types[type.code] = type;
        }
        return types;
    }
}
