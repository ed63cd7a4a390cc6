package dev.lampwright.link;

import dev.lampwright.testing.LineAround;
import java.util.Arrays;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;

/** A line that can be unplugged, muted and garbled. The settings may be changed by any thread. */
final class TroubledLine extends LineAround {
    final AtomicInteger opens = new AtomicInteger();
    final AtomicInteger reads = new AtomicInteger();
    private final ConcurrentLinkedQueue<byte[]> injected = new ConcurrentLinkedQueue<>();
    private final AtomicInteger starvations = new AtomicInteger();
    private volatile boolean unplugged;
    private volatile boolean mute;
    private volatile boolean broken;
    private volatile boolean flood;
    private volatile UnaryOperator<byte[]> fromController = UnaryOperator.identity();
    private volatile UnaryOperator<byte[]> toController = UnaryOperator.identity();
    private byte[] left = {};

    TroubledLine(Line line) {
        super(line);
    }

    /** The port disappears: nothing can be read, written or opened. */
    void unplug() {
        unplugged = true;
    }

    /** The port is back. */
    void plug() {
        unplugged = false;
    }

    /** Whether what the controller sends is lost. */
    void mute(boolean on) {
        mute = on;
    }

    /** Every call of {@link #read} ends with an internal error. */
    void breakDown(boolean on) {
        broken = on;
    }

    /** This many times, opening fails as it does when no more threads can be created. */
    void starve(int times) {
        starvations.set(times);
    }

    /** Whether there is always something to receive: broken packets, whenever the controller sends nothing. */
    void flood(boolean on) {
        flood = on;
    }

    /** Changes what is received from the controller, chunk by chunk. */
    void fromController(UnaryOperator<byte[]> change) {
        fromController = change;
    }

    /** Changes what is sent to the controller, write by write. */
    void toController(UnaryOperator<byte[]> change) {
        toController = change;
    }

    /** Makes the line deliver bytes that no controller sent. */
    void inject(byte... bytes) {
        injected.add(bytes.clone());
    }

    @Override
    public void open() throws LineException {
        opens.incrementAndGet();
        requirePlugged();
        if (starvations.getAndUpdate(left -> Math.max(0, left - 1)) > 0) {
            throw new OutOfMemoryError("starved for the test");
        }
        super.open();
        left = new byte[0];
    }

    @Override
    public int read(byte[] into, int timeoutMillis) throws LineException {
        reads.incrementAndGet();
        requirePlugged();
        if (broken) {
            throw new IllegalStateException("broken for the test");
        }
        if (left.length == 0) {
            left = next(into.length, timeoutMillis);
        }
        int count = Math.min(left.length, into.length);
        System.arraycopy(left, 0, into, 0, count);
        left = Arrays.copyOfRange(left, count, left.length);
        return count;
    }

    @Override
    public void write(byte[] bytes, int count) throws LineException {
        requirePlugged();
        byte[] changed = toController.apply(Arrays.copyOf(bytes, count));
        super.write(changed, changed.length);
    }

    private byte[] next(int most, int timeoutMillis) throws LineException {
        byte[] extra = injected.poll();
        if (extra != null) {
            return extra;
        }
        byte[] heard = new byte[most];
        int count = super.read(heard, flood ? 0 : timeoutMillis);
        if (flood && count == 0) {
            Arrays.fill(heard, 0, most - 1, (byte) 0x55);
            return heard;
        }
        return mute || count == 0 ? new byte[0] : fromController.apply(Arrays.copyOf(heard, count));
    }

    private void requirePlugged() throws LineException {
        if (unplugged) {
            throw new LineException("no port memory");
        }
    }
}
