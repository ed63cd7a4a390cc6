package dev.lampwright.protocol;

import java.util.Arrays;

/** A message as delivered by {@link MessageReader}: a view of the reader's buffer, valid only until the handler returns. */
public final class Message {
    /** The wire version of this code, as defined in {@code firmware-notes/wire.md}. */
    public static final int WIRE_VERSION = 1;

    private static final int HEADER = 2;

    private final byte[] packet;
    private int bodyLength;

    Message(byte[] packet) {
        this.packet = packet;
    }

    void of(int newBodyLength) {
        bodyLength = newBodyLength;
    }

    /**
     * The type of the message.
     *
     * @return its type, {@link MessageType#UNKNOWN} for a code of a later version
     */
    public MessageType type() {
        return MessageType.of(typeCode());
    }

    /**
     * The byte that stands for the type.
     *
     * @return 0 to 255
     */
    public int typeCode() {
        return packet[0] & 0xFF;
    }

    /**
     * The sequence number.
     *
     * @return 0 to 255
     */
    public int sequence() {
        return packet[1] & 0xFF;
    }

    /**
     * The length of the body.
     *
     * @return bytes, 0 or more
     */
    public int bodyLength() {
        return bodyLength;
    }

    /**
     * One byte of the body.
     *
     * @param at offset in the body
     * @return 0 to 255
     * @throws MalformedMessageException if the body is too short for it
     */
    public int u8(int at) throws MalformedMessageException {
        require(at + 1);
        return packet[HEADER + at] & 0xFF;
    }

    /**
     * One byte of the body, if it is long enough.
     *
     * @param at offset in the body
     * @param otherwise the result if the body is too short
     * @return 0 to 255, or {@code otherwise}
     */
    public int u8Or(int at, int otherwise) {
        return at < bodyLength ? packet[HEADER + at] & 0xFF : otherwise;
    }

    /**
     * Two bytes of the body, the high one first.
     *
     * @param at offset of the first in the body
     * @return 0 to 65535
     * @throws MalformedMessageException if the body is too short for it
     */
    public int u16(int at) throws MalformedMessageException {
        require(at + 2);
        return (packet[HEADER + at] & 0xFF) << 8 | (packet[HEADER + at + 1] & 0xFF);
    }

    /**
     * Copies a run of the body.
     *
     * @param at offset of its first byte in the body
     * @param count bytes to copy
     * @param target where to copy to
     * @param targetAt index of the first byte to write
     * @throws MalformedMessageException if the body is too short for it
     */
    public void copy(int at, int count, byte[] target, int targetAt) throws MalformedMessageException {
        require(at + count);
        System.arraycopy(packet, HEADER + at, target, targetAt, count);
    }

    /**
     * The whole body, copied.
     *
     * @return a new array of {@link #bodyLength} bytes
     */
    public byte[] body() {
        return Arrays.copyOfRange(packet, HEADER, HEADER + bodyLength);
    }

    private void require(int length) throws MalformedMessageException {
        if (length > bodyLength) {
            throw MalformedMessageException.tooShort(type(), bodyLength);
        }
    }
}
