package dev.lampwright.broker;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A broker that behaves as a test requires. It implements MQTT 3.1.1 by hand (OASIS, sections 3.1 to 3.9), so that it can be wrong at any
 * byte.
 */
public final class FakeBroker implements AutoCloseable {
    /** What it does with one connection, which is closed when this returns or throws. */
    @FunctionalInterface
    public interface Script {
        void play(Peer peer) throws IOException;
    }

    private final ServerSocket server;
    private final Script script;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private final AtomicInteger connections = new AtomicInteger();

    private FakeBroker(int port, Script script) {
        this.script = script;
        try {
            this.server = new ServerSocket(port, 50, InetAddress.getLoopbackAddress());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static FakeBroker on(int port, Script script) {
        FakeBroker broker = new FakeBroker(port, script);
        daemon(broker::accept);
        return broker;
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "fake broker");
        thread.setDaemon(true);
        thread.start();
    }

    private void accept() {
        while (!server.isClosed()) {
            try {
                Socket socket = server.accept();
                open.add(socket);
                connections.incrementAndGet();
                daemon(() -> play(socket));
            } catch (IOException e) {
                return;
            }
        }
    }

    private void play(Socket socket) {
        try (socket) {
            script.play(new Peer(socket));
        } catch (IOException e) {
            // The client has gone, which most scripts lead to.
        } finally {
            open.remove(socket);
        }
    }

    /** How many connections it has accepted. */
    public int connections() {
        return connections.get();
    }

    /** Ends all its connections. */
    public void hangUp() {
        try {
            for (Socket socket : open) {
                socket.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        try {
            server.close();
            hangUp();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A packet: its first byte, the length of its body (MQTT 3.1.1, section 2.2.3), and its body. */
    public static byte[] framed(int first, byte[] body) {
        ByteArrayOutputStream packet = new ByteArrayOutputStream();
        packet.write(first);
        int length = body.length;
        do {
            packet.write(length < 0x80 ? length : (length & 0x7F) | 0x80);
            length >>= 7;
        } while (length > 0);
        packet.writeBytes(body);
        return packet.toByteArray();
    }

    /** The two bytes at an offset in a body, as a number. */
    public static int number(byte[] body, int at) {
        return ((body[at] & 0xFF) << 8) | (body[at + 1] & 0xFF);
    }

    /** The client at the other end. */
    public static final class Peer {
        private final DataInputStream in;
        private final OutputStream out;
        private int type;

        public Peer(Socket socket) throws IOException {
            this.in = new DataInputStream(socket.getInputStream());
            this.out = socket.getOutputStream();
        }

        /** Reads one packet and returns what follows its first byte and its length. */
        public byte[] packet() throws IOException {
            type = in.readUnsignedByte() >> 4;
            int length = 0;
            int shift = 0;
            int next;
            do {
                next = in.readUnsignedByte();
                length |= (next & 0x7F) << shift;
                shift += 7;
            } while (next >= 0x80);
            byte[] body = new byte[length];
            in.readFully(body);
            return body;
        }

        /** The type of the packet that was read last (MQTT 3.1.1, table 2.1). */
        public int type() {
            return type;
        }

        public void send(int... bytes) throws IOException {
            byte[] all = new byte[bytes.length];
            for (int i = 0; i < bytes.length; i++) {
                all[i] = (byte) bytes[i];
            }
            send(all);
        }

        public void send(byte[] bytes) throws IOException {
            out.write(bytes);
            out.flush();
        }

        /** Receives CONNECT and answers with CONNACK. */
        public void connack(int code) throws IOException {
            packet();
            send(0x20, 2, 0, code);
        }

        /** Receives SUBSCRIBE and answers with SUBACK, with the same code for each of its topics. */
        public void suback(int code, int topics) throws IOException {
            byte[] subscribe = packet();
            send(0x90, 2 + topics, subscribe[0], subscribe[1]);
            for (int i = 0; i < topics; i++) {
                send(code);
            }
        }

        /** Answers a SUBSCRIBE that {@link #packet} has read: QoS 0 for each of its topics (MQTT 3.1.1, sections 3.8 and 3.9). */
        public void suback(byte[] subscribe) throws IOException {
            int topics = 0;
            for (int at = 2; at < subscribe.length; at += 3 + number(subscribe, at)) {
                topics++;
            }
            byte[] body = new byte[2 + topics];
            body[0] = subscribe[0];
            body[1] = subscribe[1];
            send(framed(0x90, body));
        }

        /** PUBLISH at QoS 0. */
        public void publish(String topic, byte[] payload) throws IOException {
            publish(topic, payload, false);
        }

        /** PUBLISH at QoS 0, with or without the retain flag. */
        public void publish(String topic, byte[] payload, boolean retained) throws IOException {
            byte[] name = topic.getBytes(StandardCharsets.UTF_8);
            ByteArrayOutputStream body = new ByteArrayOutputStream();
            body.write(name.length >> 8);
            body.write(name.length);
            body.writeBytes(name);
            body.writeBytes(payload);
            send(framed(retained ? 0x31 : 0x30, body.toByteArray()));
        }

        /** Sends nothing more until the client goes. */
        public void silence() throws IOException {
            int heard;
            do {
                heard = in.read();
            } while (heard >= 0);
        }
    }
}
