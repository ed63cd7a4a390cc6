package dev.lampwright.testing;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.protocol.Here;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.lang.ProcessBuilder.Redirect;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.UnaryOperator;

/**
 * A controller behind a real device node: a {@link MemoryController} at the far end of a pseudo-terminal, which {@code socat} (of the
 * Debian package with that name) creates and connects to a loopback socket of this process. It can be unplugged, reset, muted and corrupted
 * at any time, from any thread.
 */
public final class PtyController implements AutoCloseable {
    private static final int LOOK_EVERY_MILLIS = 5;

    private final Path port;
    private final Recording recording = new Recording();
    private final MemoryController controller;
    private final ServerSocket server;
    private final Thread thread = new Thread(this::run, "pty controller");

    private volatile boolean closed;
    private volatile boolean mute;
    private boolean frozen;
    private volatile UnaryOperator<byte[]> fromHost = Faults.none();
    private volatile UnaryOperator<byte[]> toHost = Faults.none();
    private volatile Socket socket;
    private Process socat;
    private InputStream slaveKeptOpen;

    /**
     * Creates one that is switched on and not plugged in.
     *
     * @param port where its device node will appear; the name must be free
     * @param here what the controller reports about itself
     */
    public PtyController(Path port, Here here) {
        this.port = port;
        controller = new MemoryController(here, recording);
        controller.connect(this::answer);
        try {
            server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        controller.start(System.nanoTime());
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Creates one, in a directory, that is plugged in.
     *
     * @param directory where its device node will appear
     * @return the controller, a {@link MemoryController#BOARD}
     */
    public static PtyController pluggedIn(Path directory) {
        PtyController pty = new PtyController(directory.resolve("controller"), MemoryController.BOARD);
        pty.plug();
        return pty;
    }

    /** Its device node, or where it will be: a symbolic link to the pseudo-terminal. */
    public Path port() {
        return port;
    }

    /** What it has shown. */
    public Recording recording() {
        return recording;
    }

    /** Plugs it in: the device node appears. */
    public synchronized void plug() {
        try {
            socat = new ProcessBuilder("socat", "PTY,link=" + port + ",rawer", "TCP:127.0.0.1:" + server.getLocalPort())
                    .redirectErrorStream(true)
                    .redirectOutput(Redirect.DISCARD)
                    .start();
            Await.until("socat's device node", () -> Files.exists(port) && socket != null);
            slaveKeptOpen = Files.newInputStream(port);
            if (frozen) {
                signal("STOP");
            }
        } catch (IOException e) {
            throw new UncheckedIOException("socat does not start: install the Debian package socat", e);
        }
    }

    /** Pulls the cable: the device node disappears even while it is open. The controller keeps its power. */
    public synchronized void unplug() {
        if (socat == null) {
            return;
        }
        try {
            slaveKeptOpen.close();
            socat.destroy();
            signal("CONT");
            if (!socat.waitFor(5, TimeUnit.SECONDS)) {
                socat.destroyForcibly().waitFor();
            }
            Files.deleteIfExists(port);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        socat = null;
        Await.until("the connection's end", () -> socket == null);
    }

    /** Presses its reset button. */
    public void reset() {
        synchronized (controller) {
            controller.start(System.nanoTime());
        }
    }

    /** Sets whether its answers are blocked from the host. */
    public void mute(boolean on) {
        mute = on;
    }

    /** Sends meaningless bytes to the host. */
    public void sendGarbage(byte... bytes) {
        synchronized (controller) {
            write(bytes);
        }
    }

    /** Changes what reaches the controller, chunk by chunk. */
    public void fromHost(UnaryOperator<byte[]> faults) {
        fromHost = faults;
    }

    /** Changes what reaches the host, message by message. */
    public void toHost(UnaryOperator<byte[]> faults) {
        toHost = faults;
    }

    /** Stops accepting bytes from the line, like a hanging board, until {@link #thaw}; plugged in or not. */
    public synchronized void freeze() {
        frozen = true;
        signal("STOP");
    }

    /** Continues after {@link #freeze}. */
    public synchronized void thaw() {
        frozen = false;
        signal("CONT");
    }

    @Override
    public void close() {
        closed = true;
        unplug();
        try {
            server.close();
            thread.join(TimeUnit.SECONDS.toMillis(5));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void signal(String name) {
        if (socat == null) {
            return;
        }
        try {
            new ProcessBuilder("kill", "-" + name, Long.toString(socat.pid()))
                    .start()
                    .waitFor();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void run() {
        while (!closed) {
            try (Socket connection = server.accept()) {
                connection.setTcpNoDelay(true);
                connection.setSoTimeout(LOOK_EVERY_MILLIS);
                socket = connection;
                listen(connection);
            } catch (IOException e) {
                // The cable was pulled, or the server closed: the loop's condition shows which.
            } finally {
                socket = null;
            }
        }
    }

    private void listen(Socket connection) throws IOException {
        byte[] heard = new byte[4096];
        int count = 0;
        while (count >= 0) {
            count = read(connection, heard);
            byte[] changed = fromHost.apply(Arrays.copyOf(heard, Math.max(0, count)));
            for (byte value : changed) {
                synchronized (controller) {
                    controller.receive(value, System.nanoTime());
                }
            }
            synchronized (controller) {
                controller.pass(System.nanoTime());
            }
        }
    }

    private static int read(Socket connection, byte[] heard) throws IOException {
        try {
            return connection.getInputStream().read(heard);
        } catch (SocketTimeoutException e) {
            return 0;
        }
    }

    /** Runs inside the controller's calls, and therefore holds its lock. */
    private void answer(byte[] bytes, int count, long nanos) {
        for (long left = nanos - System.nanoTime(); left > 0; left = nanos - System.nanoTime()) {
            LockSupport.parkNanos(left);
        }
        if (!mute) {
            write(toHost.apply(Arrays.copyOf(bytes, count)));
        }
    }

    private void write(byte[] bytes) {
        Socket connection = socket;
        if (connection == null) {
            return;
        }
        try {
            OutputStream out = connection.getOutputStream();
            out.write(bytes);
            out.flush();
        } catch (IOException e) {
            // The cable was just pulled.
        }
    }
}
