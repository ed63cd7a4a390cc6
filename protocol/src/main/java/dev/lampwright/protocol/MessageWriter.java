package dev.lampwright.protocol;

/**
 * Builds one message at a time and encodes it for the line. Its buffers are created once; writing allocates nothing.
 *
 * <p>Call {@link #begin}, then the body's fields in order, then {@link #finish}. For one thread.
 */
public final class MessageWriter {
    /** Bytes of a packet that are not its body: type, sequence and checksum. */
    public static final int OVERHEAD = 4;

    private final byte[] packet;
    private final byte[] wire;
    private int length;

    /**
     * Creates a writer.
     *
     * @param largestBody maximum body length in bytes, 0 or more
     */
    public MessageWriter(int largestBody) {
        packet = new byte[largestBody + OVERHEAD];
        wire = new byte[Cobs.encodedLimit(packet.length) + 1];
    }

    /**
     * Starts a message and discards the previous one.
     *
     * @param type its type
     * @param sequence its sequence number; only the low eight bits count
     * @return this
     */
    public MessageWriter begin(MessageType type, int sequence) {
        length = 0;
        return u8(type.code()).u8(sequence);
    }

    /**
     * Adds one byte.
     *
     * @param value only its low eight bits count
     * @return this
     */
    public MessageWriter u8(int value) {
        packet[length++] = (byte) value;
        return this;
    }

    /**
     * Adds two bytes, the high one first.
     *
     * @param value only its low sixteen bits count
     * @return this
     */
    public MessageWriter u16(int value) {
        return u8(value >> 8).u8(value);
    }

    /**
     * Adds a run of bytes.
     *
     * @param bytes the array with the run
     * @param from index of its first byte
     * @param count bytes in the run
     * @return this
     */
    public MessageWriter bytes(byte[] bytes, int from, int count) {
        System.arraycopy(bytes, from, packet, length, count);
        length += count;
        return this;
    }

    /**
     * Ends the message: adds the checksum, encodes, and ends it with a zero.
     *
     * @return bytes of {@link #wire} that are now this message
     */
    public int finish() {
        int checksum = Crc16.of(packet, 0, length);
        u8(checksum).u8(checksum >> 8);
        int end = Cobs.encode(packet, length, wire, 0);
        wire[end] = 0;
        return end + 1;
    }

    /**
     * The buffer that {@link #finish} encodes into; the same array each time.
     *
     * @return the message just finished, from index 0
     */
    public byte[] wire() {
        return wire;
    }
}
