package dev.lampwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;

/** TCP ports on loopback. */
public final class FreePort {
    private FreePort() {}

    /**
     * A port that nothing listens on. Another program may take it, but the system is slow to assign it again.
     *
     * @return the number of the port
     */
    public static int find() {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Whether something listens. A socket that the system gives this very port is connected to itself (RFC 9293, section 3.5, simultaneous
     * open), which does not count.
     *
     * @param port the number of the port
     * @return true if a connection was accepted
     */
    public static boolean isListening(int port) {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 1000);
            return socket.getLocalPort() != port;
        } catch (IOException e) {
            return false;
        }
    }
}
