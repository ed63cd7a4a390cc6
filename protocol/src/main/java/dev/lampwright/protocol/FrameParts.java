package dev.lampwright.protocol;

/** Splits a frame into messages that the controller can accept, and writes them one after the other. Allocates nothing. */
public final class FrameParts {
    /** Bytes before the duties and the strip in the body of a {@code FRAME}. */
    public static final int HEADER = 3;

    private static final int LAST = 1;

    private final MessageWriter writer;
    private final int room;
    private final Frame frame;
    private int offset;
    private boolean done = true;

    /**
     * Creates one for frames of one size.
     *
     * @param stripBytes bytes of the strip, 0 to 65535
     * @param dimmers dimmers in use
     * @param mostPacketBytes maximum packet length in bytes before COBS, as reported by the controller in {@link Here}
     * @throws IllegalArgumentException if not even the dimmers and one byte fit into a packet
     */
    public FrameParts(int stripBytes, int dimmers, int mostPacketBytes) {
        room = mostPacketBytes - MessageWriter.OVERHEAD - HEADER;
        if (room < 2 * dimmers + 1) {
            throw new IllegalArgumentException("packets of " + mostPacketBytes + " bytes are too short for a frame");
        }
        writer = new MessageWriter(HEADER + Math.min(room, 2 * dimmers + stripBytes));
        frame = new Frame(stripBytes, dimmers);
    }

    /**
     * Starts a frame, which is copied.
     *
     * @param next a frame of the size given at construction
     */
    public void begin(Frame next) {
        frame.copyFrom(next);
        offset = 0;
        done = false;
    }

    /**
     * Whether every part has been written.
     *
     * @return true before the first {@link #begin} and after the last part
     */
    public boolean done() {
        return done;
    }

    /** Abandons the rest of the frame. */
    public void abandon() {
        done = true;
    }

    /**
     * Writes the next part.
     *
     * @param sequence its sequence number
     * @return bytes of {@link #wire} that are now this part
     */
    public int next(int sequence) {
        int dutyBytes = offset == 0 ? 2 * frame.duties().length : 0;
        int count = Math.min(room - dutyBytes, frame.strip().length - offset);
        done = offset + count == frame.strip().length;
        writer.begin(MessageType.FRAME, sequence).u16(offset).u8(done ? LAST : 0);
        if (offset == 0) {
            for (int duty : frame.duties()) {
                writer.u16(duty);
            }
        }
        writer.bytes(frame.strip(), offset, count);
        offset += count;
        return writer.finish();
    }

    /**
     * The buffer that {@link #next} writes into; the same array each time.
     *
     * @return the part just written, from index 0
     */
    public byte[] wire() {
        return writer.wire();
    }
}
