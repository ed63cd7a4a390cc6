package dev.lampwright.broker;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;

/**
 * MQTT packets from a stream, the long ones cut, so that no broker can make the client library fill the memory. A packet begins
 * with its type in one byte and its length in one to four, seven bits each, low ones first (MQTT 3.1.1, section 2.2.3).
 */
final class BrokerInput extends InputStream {
    private static final int MOST_LENGTH_BYTES = 4;

    private final InputStream in;
    private final int most;
    private final byte[] header = new byte[1 + MOST_LENGTH_BYTES];
    private int headerAt;
    private int headerSize;
    private int bodyLeft;
    private int surplus;

    /**
     * Cuts packets.
     *
     * @param in the packets as they come
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
        if (headerAt == headerSize && bodyLeft == 0 && !nextPacket()) {
            return -1;
        }
        return headerAt < headerSize ? readHeader(into, at, length) : readBody(into, at, length);
    }

    @Override
    public int available() throws IOException {
        return headerAt < headerSize ? headerSize - headerAt : in.available();
    }

    private int readHeader(byte[] into, int at, int length) {
        int count = Math.min(length, headerSize - headerAt);
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
        writeHeader(type);
        return true;
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
        throw new IOException("the length of a packet does not end");
    }

    private void writeHeader(int type) {
        header[0] = (byte) type;
        headerAt = 0;
        headerSize = 1;
        int left = bodyLeft;
        do {
            header[headerSize++] = (byte) (left < 0x80 ? left : (left & 0x7F) | 0x80);
            left >>= 7;
        } while (left > 0);
    }
}
