package dev.lampwright.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import dev.lampwright.phrase.Phrase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;

/**
 * A serial port: 8 data bits, no parity, one stop bit, no flow control. The library and its native half are loaded when a line is
 * first opened. Reading and writing allocate nothing.
 */
public final class SerialLine implements Line {
    /** The shortest wait that the library supports, and so the granularity of every wait for a first byte. */
    private static final int READ_WAIT_MILLIS = 100;

    private static final long CLOSE_MILLIS = 400;
    private static final long WRITE_NANOS = TimeUnit.SECONDS.toNanos(1);
    private static final long QUEUE_LOOK_NANOS = TimeUnit.MICROSECONDS.toNanos(500);

    /** Longer than a clean shutdown takes. */
    private static final long END_NANOS = TimeUnit.SECONDS.toNanos(3);

    /** What the queue of every common driver accepts without blocking the writer; a page is typical. */
    private static final int QUEUE_BYTES = 4000;

    private static final int PIECE_BYTES = 1024;

    /** An open port, and its watchdog. */
    private record Open(SerialPort port, Path node, WriteWatch watch) {}

    private static final OpenLines OPEN_LINES = new OpenLines();

    private final String name;
    private final int baud;
    private final AtomicReference<Open> opened = new AtomicReference<>();

    /**
     * Creates a closed line; nothing is checked yet.
     *
     * @param name device node, or a symbolic link to one
     * @param baud bits per second; any that the device supports
     */
    public SerialLine(String name, int baud) {
        this.name = name;
        this.baud = baud;
    }

    @Override
    public void open() throws LineException {
        close();
        Path node = node();
        SerialLibrary.load(SerialLine::loadAndKeepAtEnd);
        SerialPort port = portAt(node);
        port.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
        port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_WAIT_MILLIS, 0);
        if (!port.openPort()) {
            throw new LineException(OpenFailure.of(name, node, port.getLastErrorCode(), baud));
        }
        WriteWatch watch = new WriteWatch(port::closePort);
        watch.start();
        Open open = new Open(port, node, watch);
        OPEN_LINES.opened(open);
        opened.set(open);
    }

    @Override
    public int read(byte[] into, int timeoutMillis) throws LineException {
        Open open = require();
        int available = open.port.bytesAvailable();
        if (available < 0) {
            throw gone();
        }
        if (available == 0 && timeoutMillis == 0) {
            return 0;
        }
        return readWaiting(open, into, timeoutMillis);
    }

    @Override
    public void write(byte[] bytes, int count) throws LineException {
        Open open = require();
        int written = 0;
        while (written < count) {
            int piece = Math.min(PIECE_BYTES, count - written);
            awaitRoom(open, piece);
            writePiece(open, bytes, written, piece);
            written += piece;
        }
    }

    @Override
    public void close() {
        Open open = opened.getAndSet(null);
        if (open == null) {
            return;
        }
        OPEN_LINES.closed(open);
        open.watch.close();
        Thread closer = new Thread(open.port::closePort, "link close");
        closer.setDaemon(true);
        closer.start();
        try {
            closer.join(CLOSE_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public int baud() {
        return baud;
    }

    @Override
    public String name() {
        return name;
    }

    /**
     * By default, the library closes every port as soon as the process is asked to end, before the goodbye message can be sent; so it is
     * made to wait until all open lines are closed. It never removes a hook, so one serves all lines.
     */
    private static void loadAndKeepAtEnd() {
        SerialPort.addShutdownHook(new Thread(() -> OPEN_LINES.awaitNone(END_NANOS), "link end"));
    }

    private Path node() throws LineException {
        try {
            return Path.of(name).toRealPath();
        } catch (IOException e) {
            throw new LineException(Ports.missing(name));
        }
    }

    private SerialPort portAt(Path node) throws LineException {
        try {
            return SerialPort.getCommPort(node.toString());
        } catch (SerialPortInvalidPortException e) {
            throw new LineException(Ports.missing(name));
        }
    }

    /** A port whose node is gone may keep returning nothing as if it existed, so a silent one is checked. */
    private int readWaiting(Open open, byte[] into, int timeoutMillis) throws LineException {
        long started = System.nanoTime();
        long timeout = TimeUnit.MILLISECONDS.toNanos(timeoutMillis);
        int count;
        do {
            count = open.port.readBytes(into, into.length);
        } while (count == 0 && System.nanoTime() - started < timeout);
        if (count < 0 || (count == 0 && !Files.exists(open.node))) {
            throw gone();
        }
        return count;
    }

    /** Waits until a piece fits into the driver's queue, as long as the queue keeps shrinking. */
    private void awaitRoom(Open open, int piece) throws LineException {
        long moved = System.nanoTime();
        int least = Integer.MAX_VALUE;
        int queued = open.port.bytesAwaitingWrite();
        while (queued + piece > QUEUE_BYTES) {
            if (queued < least) {
                least = queued;
                moved = System.nanoTime();
            } else if (System.nanoTime() - moved > WRITE_NANOS) {
                throw stuck();
            }
            LockSupport.parkNanos(this, QUEUE_LOOK_NANOS);
            queued = open.port.bytesAwaitingWrite();
        }
    }

    private void writePiece(Open open, byte[] bytes, int from, int count) throws LineException {
        open.watch.begin();
        int written = open.port.writeBytes(bytes, count, from);
        open.watch.end();
        if (written != count) {
            throw open.watch.hasFired() ? stuck() : gone();
        }
    }

    private Open require() throws LineException {
        Open open = opened.get();
        if (open == null) {
            throw new LineException(name + " is closed");
        }
        return open;
    }

    private LineException gone() {
        return new LineException(
                Phrase.of("port_gone", name + " has disappeared: plug the controller in again", "port", name));
    }

    private LineException stuck() {
        return new LineException(Phrase.of(
                "port_stuck",
                name + " has accepted no bytes for a second: unplug the controller and plug it back in",
                "port",
                name));
    }
}
