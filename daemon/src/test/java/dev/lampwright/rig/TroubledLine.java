package dev.lampwright.rig;

import dev.lampwright.demo.MemoryLine;
import dev.lampwright.link.LineException;
import dev.lampwright.testing.LineAround;
import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;

/** An in-memory line with switchable trouble. */
final class TroubledLine extends LineAround {
    private final CountDownLatch freed = new CountDownLatch(1);
    private volatile Trouble trouble = Trouble.NONE;

    /** What is wrong with it. */
    enum Trouble {
        NONE,
        /** The port is gone. */
        GONE,
        /** The controller answers something that nobody asked. */
        LYING,
        /** Writing never returns. */
        STUCK
    }

    TroubledLine(MemoryLine line) {
        super(line);
    }

    void have(Trouble next) {
        trouble = next;
    }

    /** Releases all threads that are stuck. */
    void free() {
        freed.countDown();
    }

    @Override
    public void open() throws LineException {
        requireThere();
        super.open();
    }

    private void requireThere() throws LineException {
        if (trouble == Trouble.GONE) {
            throw new LineException("memory is gone: plug the controller in again");
        }
    }

    @Override
    public int read(byte[] into, int timeoutMillis) throws LineException {
        requireThere();
        if (trouble == Trouble.LYING) {
            LockSupport.parkNanos(1_000_000);
            Arrays.fill(into, 0, Math.min(8, into.length), (byte) 0x5a);
            into[0] = 0;
            return Math.min(8, into.length);
        }
        return super.read(into, timeoutMillis);
    }

    @Override
    public void write(byte[] bytes, int count) throws LineException {
        requireThere();
        while (trouble == Trouble.STUCK && freed.getCount() > 0) {
            LockSupport.parkNanos(10_000_000);
        }
        super.write(bytes, count);
    }
}
