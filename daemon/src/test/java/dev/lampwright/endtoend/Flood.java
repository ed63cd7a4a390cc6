package dev.lampwright.endtoend;

import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.locks.LockSupport;
import java.util.function.IntFunction;

/** A very fast publisher. It writes MQTT 3.1.1 by hand (OASIS, sections 3.1 and 3.3), at QoS 0, so that it costs little itself. */
final class Flood implements AutoCloseable {
    private static final long BATCH_NANOS = 5_000_000;
    private static final int CONNACK_BYTES = 4;

    private final Socket socket;
    private final OutputStream out;

    private Flood(Socket socket, OutputStream out) {
        this.socket = socket;
        this.out = out;
    }

    /**
     * Connects.
     *
     * @param port of a broker on loopback
     * @return an accepted connection
     */
    static Flood to(int port) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
        socket.setTcpNoDelay(true);
        OutputStream out = new BufferedOutputStream(socket.getOutputStream(), 1 << 16);
        byte[] id = "flood".getBytes(StandardCharsets.US_ASCII);
        out.write(
                new byte[] {0x10, (byte) (12 + id.length), 0, 4, 'M', 'Q', 'T', 'T', 4, 2, 0, 0, 0, (byte) id.length});
        out.write(id);
        out.flush();
        new DataInputStream(socket.getInputStream()).readFully(new byte[CONNACK_BYTES]);
        return new Flood(socket, out);
    }

    /**
     * Publishes evenly.
     *
     * @param topic the topic
     * @param payloads the payload of each message, by its number; less than 16 KiB with the topic
     * @param perSecond how many per second
     * @param seconds for how long
     * @return how many were published
     */
    int publish(String topic, IntFunction<String> payloads, int perSecond, double seconds) throws IOException {
        byte[] name = topic.getBytes(StandardCharsets.UTF_8);
        long start = System.nanoTime();
        int all = (int) (perSecond * seconds);
        int sent = 0;
        while (sent < all) {
            double elapsed = (System.nanoTime() - start) / 1e9;
            for (int due = Math.min(all, (int) (elapsed * perSecond)); sent < due; sent++) {
                publish(name, payloads.apply(sent).getBytes(StandardCharsets.UTF_8));
            }
            out.flush();
            LockSupport.parkNanos(BATCH_NANOS);
        }
        return sent;
    }

    private void publish(byte[] name, byte[] payload) throws IOException {
        int length = 2 + name.length + payload.length;
        out.write(0x30);
        if (length >= 0x80) {
            out.write((length & 0x7F) | 0x80);
            length >>= 7;
        }
        out.write(length);
        out.write(name.length >> 8);
        out.write(name.length);
        out.write(name);
        out.write(payload);
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
