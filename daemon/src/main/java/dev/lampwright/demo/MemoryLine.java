package dev.lampwright.demo;

import dev.lampwright.link.Line;
import dev.lampwright.link.LineException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;

/**
 * A line in memory to a {@link MemoryController}, as slow as its baud rate. The controller has no thread: it runs inside the calls made
 * here, receiving each byte at the moment at which it would have arrived. All methods may be called from any thread.
 */
public final class MemoryLine implements Line {
    private static final long WRITE_NANOS = TimeUnit.SECONDS.toNanos(1);
    private static final long LONGEST_PARK = TimeUnit.MILLISECONDS.toNanos(10);

    private final MemoryController controller;
    private final int baud;
    private final LongSupplier clock;
    private final PacedPipe toController;
    private final PacedPipe toHost;
    private boolean started;
    private boolean open;

    /**
     * Creates a closed line. The controller starts when it is first opened.
     *
     * @param controller the controller at the far end
     * @param baud bits per second
     * @param nanoClock a clock in ns that runs like {@link System#nanoTime}
     */
    public MemoryLine(MemoryController controller, int baud, LongSupplier nanoClock) {
        this.controller = controller;
        this.baud = baud;
        clock = nanoClock;
        toController = new PacedPipe(baud);
        toHost = new PacedPipe(baud);
    }

    @Override
    public synchronized void open() {
        toController.clear();
        toHost.clear();
        open = true;
        if (!started) {
            started = true;
            controller.connect(this::fromController);
            controller.start(clock.getAsLong());
        }
    }

    @Override
    public int read(byte[] into, int timeoutMillis) throws LineException {
        long started = clock.getAsLong();
        long timeout = TimeUnit.MILLISECONDS.toNanos(timeoutMillis);
        long now = started;
        int count = take(into, now);
        while (count == 0 && now - started < timeout) {
            LockSupport.parkNanos(this, Math.min(timeout - (now - started), untilNext(now)));
            now = clock.getAsLong();
            count = take(into, now);
        }
        return count;
    }

    @Override
    public void write(byte[] bytes, int count) throws LineException {
        long started = clock.getAsLong();
        int written = put(bytes, 0, count, started);
        while (written < count) {
            LockSupport.parkNanos(this, LONGEST_PARK);
            long now = clock.getAsLong();
            if (now - started > WRITE_NANOS) {
                throw new LineException(name() + " has accepted no bytes for a second");
            }
            written += put(bytes, written, count - written, now);
        }
    }

    @Override
    public synchronized void close() {
        open = false;
    }

    @Override
    public int baud() {
        return baud;
    }

    @Override
    public String name() {
        return "memory";
    }

    /** Runs the controller up to now, as every other call does too: its holdover may be over. */
    public synchronized void pass() {
        pass(clock.getAsLong());
    }

    /** Restarts the controller, like its reset button. */
    public synchronized void reset() {
        toController.clear();
        toHost.clear();
        controller.start(clock.getAsLong());
    }

    private void fromController(byte[] bytes, int count, long nanos) {
        toHost.put(bytes, 0, Math.min(count, toHost.room()), nanos);
    }

    private synchronized int take(byte[] into, long now) throws LineException {
        requireOpen();
        pass(now);
        int count = 0;
        while (count < into.length && toHost.arrived(now)) {
            into[count++] = toHost.take();
        }
        return count;
    }

    private synchronized int put(byte[] bytes, int from, int count, long now) throws LineException {
        requireOpen();
        pass(now);
        int taken = Math.min(count, toController.room());
        toController.put(bytes, from, taken, now);
        return taken;
    }

    private synchronized long untilNext(long now) {
        long next = LONGEST_PARK;
        if (!toController.isEmpty()) {
            next = Math.min(next, toController.lastArrival() - now);
        }
        if (!toHost.isEmpty()) {
            next = Math.min(next, toHost.firstArrival() - now);
        }
        return Math.max(1, next);
    }

    private void pass(long now) {
        while (started && toController.arrived(now)) {
            long arrival = toController.firstArrival();
            controller.receive(toController.take(), arrival);
        }
        if (started) {
            controller.pass(now);
        }
    }

    private void requireOpen() throws LineException {
        if (!open) {
            throw new LineException(name() + " is closed");
        }
    }
}
