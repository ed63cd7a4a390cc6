package dev.lampwright.protocol;

/**
 * Finds messages in a stream of bytes, whatever else is in it. It never throws for what it reads, is in step again at the next
 * zero, hands over nothing with a wrong checksum, and allocates nothing. Not for use by two threads.
 */
public final class MessageReader {
    private static final int FULL_BLOCK = 0xFF;

    /** Who is told what has been read. */
    public interface Handler {
        /**
         * A whole message with a right checksum.
         *
         * @param message good only until this returns
         */
        void message(Message message);

        /**
         * Bytes up to a zero that were no message: torn or garbled.
         *
         * @param bytes how many came before the zero, 1 or more; 0 or more after {@link #spoil}
         */
        void broken(int bytes);

        /**
         * Bytes up to a zero that were more than a packet may have; without more, as much as {@link #broken}.
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
     * Makes a reader that is at the start of a packet.
     *
     * @param largestPacket most bytes of one packet before COBS; a longer one is {@linkplain Handler#tooLong too long}
     */
    public MessageReader(int largestPacket) {
        packet = new byte[largestPacket];
        message = new Message(packet);
        restart();
    }

    /**
     * Takes bytes from the line.
     *
     * @param bytes where they stand
     * @param from index of the first
     * @param count how many, 0 or more
     * @param handler told of every message and every broken packet that these bytes end, in order
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

    /** Forgets what has come of a packet that has not ended. */
    public void restart() {
        length = 0;
        received = 0;
        blockCode = FULL_BLOCK;
        blockLeft = 0;
        tooLong = false;
        spoilt = false;
    }

    /**
     * Bytes of the line were lost just now: the packet under way or, where none is, the next ends as {@linkplain Handler#broken
     * broken}, even where its checksum happens to be right and even where nothing came of it but its zero.
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
