package dev.lampwright.broker;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;

/**
 * MQTT packets that Paho has written, with their text converted back from {@link PahoText}. They are passed on complete: the beginning of a
 * packet waits for the rest.
 */
final class BrokerOutput extends OutputStream {
    private static final int CONNECT = 1;
    private static final int SUBSCRIBE = 8;
    private static final int HAS_WILL = 0x04;
    private static final int HAS_PASSWORD = 0x40;
    private static final int HAS_USER_NAME = 0x80;

    private final OutputStream out;
    private final ByteArrayOutputStream waiting = new ByteArrayOutputStream();

    /**
     * Passes packets on.
     *
     * @param out receives the packets
     */
    BrokerOutput(OutputStream out) {
        this.out = out;
    }

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int at, int length) throws IOException {
        waiting.write(bytes, at, length);
        ByteBuffer packets = ByteBuffer.wrap(waiting.toByteArray());
        ByteArrayOutputStream whole = new ByteArrayOutputStream(packets.remaining());
        int left = packets.remaining();
        while (takePacket(packets, whole)) {
            left = packets.remaining();
        }
        if (whole.size() > 0) {
            waiting.reset();
            waiting.write(packets.array(), packets.capacity() - left, left);
            out.write(whole.toByteArray());
        }
    }

    @Override
    public void flush() throws IOException {
        out.flush();
    }

    @Override
    public void close() throws IOException {
        out.close();
    }

    /** Passes on one packet; returns false if it is not complete yet. */
    private static boolean takePacket(ByteBuffer packets, ByteArrayOutputStream to) {
        if (!packets.hasRemaining()) {
            return false;
        }
        int type = packets.get() & 0xFF;
        int length = 0;
        int next = 0x80;
        for (int i = 0; next >= 0x80 && i < BrokerInput.MOST_LENGTH_BYTES; i++) {
            if (!packets.hasRemaining()) {
                return false;
            }
            next = packets.get() & 0xFF;
            length |= (next & 0x7F) << (7 * i);
        }
        if (length > packets.remaining()) {
            return false;
        }
        ByteBuffer body = packets.slice(packets.position(), length);
        packets.position(packets.position() + length);
        to.writeBytes(BrokerInput.header(type, 0, plain(type, body)));
        return true;
    }

    /** The body of a packet with plain text in it. Sections 3.1, 3.3 and 3.8 of MQTT 3.1.1 say where the text is. */
    private static byte[] plain(int type, ByteBuffer from) {
        ByteArrayOutputStream to = new ByteArrayOutputStream(from.remaining());
        switch (type >> 4) {
            case CONNECT -> connect(from, to);
            case BrokerInput.PUBLISH -> text(from, to);
            case SUBSCRIBE -> subscribe(from, to);
            default -> {
                // Nothing else contains our text.
            }
        }
        copy(from, from.remaining(), to);
        return to.toByteArray();
    }

    private static void connect(ByteBuffer from, ByteArrayOutputStream to) {
        text(from, to);
        int flags = from.get(from.position() + 1);
        copy(from, 4, to);
        text(from, to);
        if ((flags & HAS_WILL) != 0) {
            text(from, to);
            copy(from, 2 + from.getChar(from.position()), to);
        }
        if ((flags & HAS_USER_NAME) != 0) {
            text(from, to);
        }
        if ((flags & HAS_PASSWORD) != 0) {
            text(from, to);
        }
    }

    private static void subscribe(ByteBuffer from, ByteArrayOutputStream to) {
        copy(from, 2, to);
        while (from.hasRemaining()) {
            text(from, to);
            copy(from, 1, to);
        }
    }

    private static void text(ByteBuffer from, ByteArrayOutputStream to) {
        byte[] written = new byte[from.getChar()];
        from.get(written);
        byte[] plain = PahoText.isPlainAscii(written)
                ? written
                : PahoText.plain(new String(written, UTF_8)).getBytes(UTF_8);
        to.write(plain.length >> 8);
        to.write(plain.length);
        to.writeBytes(plain);
    }

    private static void copy(ByteBuffer from, int bytes, ByteArrayOutputStream to) {
        byte[] copied = new byte[bytes];
        from.get(copied);
        to.writeBytes(copied);
    }
}
