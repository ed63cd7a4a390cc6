package dev.lampwright.broker;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.ProtocolException;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.time.Duration;
import org.eclipse.paho.client.mqttv3.MqttException;

/**
 * A connection that does nothing but keep one last will at a broker: it logs in with it, answers that it is there, and says goodbye (MQTT
 * 3.1.1, sections 3.1, 3.2, 3.12 to 3.14). It has no thread and keeps no buffers, so that many rigs can have one each. One thread at a time pings; any
 * thread may end it.
 */
final class WillConnection {
    private static final int CONNECT = 0x10;
    private static final int CONNACK = 0x20;
    private static final byte[] PINGREQ = {(byte) 0xC0, 0};
    private static final int PINGRESP = 0xD0;
    private static final byte[] DISCONNECT = {(byte) 0xE0, 0};

    private static final int VERSION = 4;
    private static final int CLEAN = 0x02;
    /** The will, at QoS 1, retained. */
    private static final int WILL = 0x04 | 0x08 | 0x20;

    private static final int PASSWORD = 0x40;
    private static final int USER_NAME = 0x80;

    private final BrokerSocket network;
    private final Socket socket;
    private final InputStream in;
    private final OutputStream out;

    private WillConnection(BrokerSocket network, Socket socket) throws IOException {
        this.network = network;
        this.socket = socket;
        in = socket.getInputStream();
        out = socket.getOutputStream();
    }

    /**
     * Logs in with a will.
     *
     * @param network the network connection, not started
     * @param login our credentials
     * @param clientId our name at the broker, 1 to 23 letters and digits
     * @param will what the broker publishes when it loses the connection
     * @param patience how long to wait
     * @return the connection
     * @throws BrokerException if the broker does not accept the login in time
     */
    static WillConnection open(BrokerSocket network, Login login, String clientId, Will will, Patience patience)
            throws BrokerException {
        try {
            WillConnection made = new WillConnection(network, network.open(patience.answer()));
            made.out.write(connect(login, clientId, will, patience.keepAlive()));
            made.out.flush();
            made.awaitLogin();
            return made;
        } catch (IOException | BrokerException e) {
            network.abort();
            throw BrokerWords.failureToOpen(e, network.isSecure());
        }
    }

    private static byte[] connect(Login login, String clientId, Will will, Duration keepAlive) {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        put(body, "MQTT".getBytes(UTF_8));
        body.write(VERSION);
        body.write(CLEAN
                | WILL
                | (login.username().isPresent() ? USER_NAME : 0)
                | (login.password().isPresent() ? PASSWORD : 0));
        putNumber(body, Math.toIntExact(keepAlive.toSeconds()));
        put(body, clientId.getBytes(UTF_8));
        put(body, will.topic().getBytes(UTF_8));
        put(body, will.lost().getBytes(UTF_8));
        login.username().ifPresent(name -> put(body, name.getBytes(UTF_8)));
        login.password().ifPresent(word -> put(body, String.valueOf(word).getBytes(UTF_8)));
        return packet(CONNECT, body.toByteArray());
    }

    private static void put(ByteArrayOutputStream body, byte[] text) {
        putNumber(body, text.length);
        body.writeBytes(text);
    }

    private static void putNumber(ByteArrayOutputStream body, int number) {
        body.write(number >> 8);
        body.write(number);
    }

    /** With its length in one to four bytes, seven bits each, low ones first (section 2.2.3). */
    private static byte[] packet(int type, byte[] body) {
        ByteArrayOutputStream packet = new ByteArrayOutputStream();
        packet.write(type);
        int length = body.length;
        while (length >= 0x80) {
            packet.write((length & 0x7F) | 0x80);
            length >>= 7;
        }
        packet.write(length);
        packet.writeBytes(body);
        return packet.toByteArray();
    }

    private void awaitLogin() throws IOException, BrokerException {
        int code;
        try {
            require(CONNACK, 2);
            next();
            code = next();
        } catch (SocketTimeoutException e) {
            throw new BrokerException(
                    "the connection was accepted but not answered; check that an MQTT broker listens there", e);
        }
        if (code != 0) {
            throw BrokerWords.failure(new MqttException(code));
        }
    }

    private void require(int type, int length) throws IOException {
        if (next() != type || next() != length) {
            throw new ProtocolException("what came back is not MQTT; check the port in the url");
        }
    }

    private int next() throws IOException {
        int one = in.read();
        if (one < 0) {
            throw new EOFException();
        }
        return one;
    }

    /**
     * Asks the broker whether the connection is there.
     *
     * @throws IOException if it is not
     */
    void ping() throws IOException {
        out.write(PINGREQ);
        out.flush();
    }

    /**
     * Waits for the answer to a {@link #ping}.
     *
     * @param most how long to wait
     * @throws IOException if it does not come
     */
    void awaitAnswer(Duration most) throws IOException {
        socket.setSoTimeout(Math.toIntExact(Math.max(1, most.toMillis())));
        require(PINGRESP, 0);
    }

    /** Says goodbye, so that the broker forgets the will, and ends. */
    void end() {
        try {
            out.write(DISCONNECT);
            out.flush();
        } catch (IOException e) {
            // The connection is gone either way.
        }
        network.abort();
    }

    /** Ends without a goodbye; the broker then publishes the will. */
    void abort() {
        network.abort();
    }
}
