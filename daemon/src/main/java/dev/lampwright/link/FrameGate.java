package dev.lampwright.link;

import java.util.concurrent.locks.LockSupport;

/** Where the link's thread waits for a fresh frame. Opening it neither blocks nor allocates. */
final class FrameGate {
    private final FrameSlot frames;
    private volatile Thread waiting;

    FrameGate(FrameSlot frames) {
        this.frames = frames;
    }

    /**
     * Waits until a frame is fresh, {@link #open} is called, or time is up. May return sooner.
     *
     * @param nanos how long at most
     */
    void await(long nanos) {
        waiting = Thread.currentThread();
        if (!frames.fresh()) {
            LockSupport.parkNanos(this, nanos);
        }
        waiting = null;
    }

    /** Releases the waiting thread, if there is one. */
    void open() {
        Thread thread = waiting;
        if (thread != null) {
            LockSupport.unpark(thread);
        }
    }
}
