package dev.lampwright.broker;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.ProtocolException;
import java.util.Arrays;

/**
 * MQTT packets from a stream, adapted for the client library. Long ones are cut, and messages at QoS 2, to which nobody subscribes, end the
 * connection, so that no broker can make the library exhaust memory; topics are converted to {@link PahoText}. A packet starts with its
 * type in one byte and its length in one to four, seven bits each, low ones first (MQTT 3.1.1, section 2.2.3).
 */
final class BrokerInput extends InputStream {
    static final int MOST_LENGTH_BYTES = 4;
    static final int PUBLISH = 3;

    private final InputStream in;
    private final int most;
    private byte[] header = {};
    private int headerAt;
    private int bodyLeft;
    private int surplus;

    /**
     * Cuts packets.
     *
     * @param in the incoming packets
     * @param most a packet's length is cut to this, in bytes
     */
    BrokerInput(InputStream in, int most) {
        this.in = in;
        this.most = most;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int at, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (headerAt == header.length && bodyLeft == 0 && !nextPacket()) {
            return -1;
        }
        return headerAt < header.length ? readHeader(into, at, length) : readBody(into, at, length);
    }

    @Override
    public int available() throws IOException {
        return headerAt < header.length ? header.length - headerAt : in.available();
    }

    private int readHeader(byte[] into, int at, int length) {
        int count = Math.min(length, header.length - headerAt);
        System.arraycopy(header, headerAt, into, at, count);
        headerAt += count;
        return count;
    }

    private int readBody(byte[] into, int at, int length) throws IOException {
        int count = in.read(into, at, Math.min(length, bodyLeft));
        bodyLeft -= Math.max(count, 0);
        return count;
    }

    private boolean nextPacket() throws IOException {
        in.skipNBytes(surplus);
        surplus = 0;
        int type = in.read();
        if (type < 0) {
            return false;
        }
        int length = readLength();
        bodyLeft = Math.min(length, most);
        surplus = length - bodyLeft;
        header = type >> 4 == PUBLISH ? publish(type) : header(type, bodyLeft, new byte[0]);
        headerAt = 0;
        return true;
    }

    /** The beginning of a message, up to its topic. */
    private byte[] publish(int type) throws IOException {
        if (((type >> 1) & 3) == 2) {
            throw new ProtocolException("the broker sends messages at QoS 2, though the subscription is at QoS 1"
                    + " (MQTT 3.1.1, section 3.8.4); check the broker");
        }
        byte[] size = in.readNBytes(Math.min(2, bodyLeft));
        bodyLeft -= size.length;
        int topicSize = size.length < 2 ? 0 : ((size[0] & 0xFF) << 8) | (size[1] & 0xFF);
        if (topicSize == 0 || topicSize > bodyLeft) {
            return header(type, bodyLeft, size);
        }
        byte[] topic = in.readNBytes(topicSize);
        bodyLeft -= topicSize;
        byte[] written = PahoText.isPlainAscii(topic) ? topic : PahoText.topic(new String(topic, UTF_8));
        byte[] start = new byte[2 + written.length];
        start[0] = (byte) (written.length >> 8);
        start[1] = (byte) written.length;
        System.arraycopy(written, 0, start, 2, written.length);
        return header(type, bodyLeft, start);
    }

    private int readLength() throws IOException {
        int length = 0;
        for (int i = 0; i < MOST_LENGTH_BYTES; i++) {
            int next = in.read();
            if (next < 0) {
                throw new EOFException();
            }
            length |= (next & 0x7F) << (7 * i);
            if (next < 0x80) {
                return length;
            }
        }
        throw new IOException("a packet's length field is too long");
    }

    /**
     * The beginning of a packet.
     *
     * @param type its first byte
     * @param rest how many bytes follow after these
     * @param start first bytes of its body
     */
    static byte[] header(int type, int rest, byte[] start) {
        byte[] header = new byte[1 + MOST_LENGTH_BYTES + start.length];
        header[0] = (byte) type;
        int at = 1;
        int left = start.length + rest;
        do {
            header[at++] = (byte) (left < 0x80 ? left : (left & 0x7F) | 0x80);
            left >>= 7;
        } while (left > 0);
        System.arraycopy(start, 0, header, at, start.length);
        return Arrays.copyOf(header, at + start.length);
    }
}
