package dev.lampwright.protocol;

/** A message with a valid checksum but a body that is not valid. The message says what is wrong with it. */
public final class MalformedMessageException extends Exception {
    private static final long serialVersionUID = 1L;
    private static final int WHOLE_BODY = -1;

    private final int at;

    private MalformedMessageException(String what, int at) {
        super(what);
        this.at = at;
    }

    static MalformedMessageException tooShort(MessageType type, int bodyLength) {
        return new MalformedMessageException(type + " has a body of " + bodyLength + " bytes, too short", WHOLE_BODY);
    }

    static MalformedMessageException outOfRange(int at) {
        return new MalformedMessageException("the field at " + at + " is out of range", at);
    }

    /**
     * Which field is wrong.
     *
     * @return its offset in the body, or -1 if the body is too short
     */
    public int at() {
        return at;
    }
}
