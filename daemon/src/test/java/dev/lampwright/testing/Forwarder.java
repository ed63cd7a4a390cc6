package dev.lampwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** A loopback port that forwards everything to another one, and can cut the connections like a pulled cable. */
public final class Forwarder implements AutoCloseable {
    private final ServerSocket server;
    private final int target;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private volatile boolean isCut;

    private Forwarder(ServerSocket server, int target) {
        this.server = server;
        this.target = target;
    }

    /**
     * Starts one.
     *
     * @param target the port to forward to
     * @return the forwarder, listening
     */
    public static Forwarder to(int target) {
        try {
            Forwarder forwarder = new Forwarder(new ServerSocket(0, 50, InetAddress.getLoopbackAddress()), target);
            daemon(forwarder::accept);
            return forwarder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "forwarder");
        thread.setDaemon(true);
        thread.start();
    }

    /** Where it listens. */
    public int port() {
        return server.getLocalPort();
    }

    private void accept() {
        while (!server.isClosed()) {
            try {
                connect(server.accept());
            } catch (IOException e) {
                closeAll();
            }
        }
    }

    private void connect(Socket near) throws IOException {
        Socket far = new Socket(InetAddress.getLoopbackAddress(), target);
        open.add(near);
        open.add(far);
        daemon(() -> pass(near, far));
        daemon(() -> pass(far, near));
        if (isCut) {
            closeAll();
        }
    }

    private static void pass(Socket from, Socket to) {
        try (from;
                to) {
            from.getInputStream().transferTo(to.getOutputStream());
        } catch (IOException e) {
            // Either end is gone; both are closed.
        }
    }

    /** Ends all connections silently, and each new one as soon as it is made, until {@link #restore}. */
    public void cut() {
        isCut = true;
        closeAll();
    }

    /** Lets new connections be. */
    public void restore() {
        isCut = false;
    }

    private void closeAll() {
        open.forEach(Forwarder::close);
        open.clear();
    }

    private static void close(Socket socket) {
        try {
            socket.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        try {
            server.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        closeAll();
    }
}
