package dev.lampwright.protocol;

import java.util.Arrays;

/** Messages as a reader passes them on, made by hand. */
final class Bodies {
    /** What an earlier, longer packet left behind in the reader's buffer; no field may be read from it. */
    private static final byte LEFT_BEHIND = 0x55;

    private static final int SEQUENCE = 9;

    private Bodies() {}

    /** A message with a body, its buffer longer than the message. */
    static Message of(MessageType type, int... body) {
        byte[] packet = new byte[body.length + 600];
        Arrays.fill(packet, LEFT_BEHIND);
        packet[0] = (byte) type.code();
        packet[1] = SEQUENCE;
        for (int i = 0; i < body.length; i++) {
            packet[2 + i] = (byte) body[i];
        }
        Message message = new Message(packet);
        message.of(body.length);
        return message;
    }

    /** A body with one byte changed. */
    static int[] with(int[] body, int at, int value) {
        int[] changed = body.clone();
        changed[at] = value;
        return changed;
    }
}
