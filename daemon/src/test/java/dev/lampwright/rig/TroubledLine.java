package dev.lampwright.rig;

import dev.lampwright.demo.MemoryLine;
import dev.lampwright.link.Line;
import dev.lampwright.link.LineException;
import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;

/** A line in memory that can be given trouble. */
final class TroubledLine implements Line {
    private final MemoryLine line;
    private final CountDownLatch freed = new CountDownLatch(1);
    private volatile Trouble trouble = Trouble.NONE;

    /** What is wrong with it. */
    enum Trouble {
        NONE,
        /** The port is gone. */
        GONE,
        /** The controller answers what nobody asked for. */
        LYING,
        /** Whoever writes never comes back. */
        STUCK
    }

    TroubledLine(MemoryLine line) {
        this.line = line;
    }

    void have(Trouble next) {
        trouble = next;
    }

    /** Lets everybody go who is stuck. */
    void free() {
        freed.countDown();
    }

    @Override
    public void open() throws LineException {
        requireThere();
        line.open();
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
        return line.read(into, timeoutMillis);
    }

    @Override
    public void write(byte[] bytes, int count) throws LineException {
        requireThere();
        while (trouble == Trouble.STUCK && freed.getCount() > 0) {
            LockSupport.parkNanos(10_000_000);
        }
        line.write(bytes, count);
    }

    @Override
    public void close() {
        line.close();
    }

    @Override
    public int baud() {
        return line.baud();
    }

    @Override
    public String name() {
        return line.name();
    }
}
