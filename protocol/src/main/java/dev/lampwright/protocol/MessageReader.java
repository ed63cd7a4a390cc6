package dev.lampwright.protocol;

/**
 * Finds messages in a stream of bytes, whatever else it contains. Never throws because of its input, resynchronises at the next zero,
 * delivers nothing with a wrong checksum, and allocates nothing. For one thread.
 */
public final class MessageReader {
    private static final int FULL_BLOCK = 0xFF;

    /** Receives what has been read. */
    public interface Handler {
        /**
         * A whole message with a valid checksum.
         *
         * @param message valid only until this returns
         */
        void message(Message message);

        /**
         * Bytes up to a zero that were not a message: incomplete or corrupted.
         *
         * @param bytes how many came before the zero, 1 or more; 0 or more after {@link #spoil}
         */
        void broken(int bytes);

        /**
         * More bytes up to a zero than a packet may have; by default the same as {@link #broken}.
         *
         * @param bytes how many came before the zero
         */
        default void tooLong(int bytes) {
            broken(bytes);
        }
    }

    private final byte[] packet;
    private final Message message;
    private int length;
    private int received;
    private int blockCode;
    private int blockLeft;
    private boolean tooLong;
    private boolean spoilt;

    /**
     * Creates a reader at the start of a packet.
     *
     * @param largestPacket maximum packet length in bytes before COBS; a longer one is {@linkplain Handler#tooLong too long}
     */
    public MessageReader(int largestPacket) {
        packet = new byte[largestPacket];
        message = new Message(packet);
        restart();
    }

    /**
     * Accepts bytes from the line.
     *
     * @param bytes the buffer
     * @param from index of the first
     * @param count how many, 0 or more
     * @param handler receives every message and every broken packet that these bytes complete, in order
     */
    public void accept(byte[] bytes, int from, int count, Handler handler) {
        for (int i = from; i < from + count; i++) {
            int value = bytes[i] & 0xFF;
            if (value == 0) {
                end(handler);
            } else {
                take(value);
            }
        }
    }

    /** Forgets the beginning of an incomplete packet. */
    public void restart() {
        length = 0;
        received = 0;
        blockCode = FULL_BLOCK;
        blockLeft = 0;
        tooLong = false;
        spoilt = false;
    }

    /**
     * Call this when bytes of the line have just been lost: the current packet or, if there is none, the next one ends as
     * {@linkplain Handler#broken broken}, even if its checksum happens to be right and even if only its zero came.
     */
    public void spoil() {
        spoilt = true;
    }

    private void take(int value) {
        received++;
        if (blockLeft > 0) {
            blockLeft--;
            store(value);
            return;
        }
        if (blockCode != FULL_BLOCK) {
            store(0);
        }
        blockCode = value;
        blockLeft = value - 1;
    }

    private void store(int value) {
        if (length == packet.length) {
            tooLong = true;
            return;
        }
        packet[length++] = (byte) value;
    }

    private void end(Handler handler) {
        int bytes = received;
        int bodyLength = length - MessageWriter.OVERHEAD;
        boolean overlong = tooLong;
        boolean hurt = spoilt;
        boolean whole = !hurt && blockLeft == 0 && bodyLength >= 0 && checksumIsRight();
        restart();
        if (overlong && !hurt) {
            handler.tooLong(bytes);
        } else if (whole) {
            message.of(bodyLength);
            handler.message(message);
        } else if (bytes > 0 || hurt) {
            handler.broken(bytes);
        }
    }

    private boolean checksumIsRight() {
        int sent = (packet[length - 2] & 0xFF) | (packet[length - 1] & 0xFF) << 8;
        return sent == Crc16.of(packet, 0, length - 2);
    }
}
