package dev.lampwright.link;

import dev.lampwright.protocol.Frame;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The single slot between the frame loop and the link, where the newest frame wins. One thread fills, one thread takes; neither ever waits
 * for the other, and nothing is allocated: three frames rotate.
 */
public final class FrameSlot {
    private static final int FRESH = 4;
    private static final int INDEX = 3;

    private final Frame[] frames;
    private final AtomicInteger middle = new AtomicInteger(1);
    private final long[] madeAt = new long[3];
    private final AtomicLong skipped = new AtomicLong();
    private final Deliveries deliveries = new Deliveries();
    private int back;
    private int front = 2;

    /**
     * Creates an empty slot.
     *
     * @param stripBytes bytes of the strip in each frame
     * @param dimmers dimmers in each frame
     */
    public FrameSlot(int stripBytes, int dimmers) {
        frames = new Frame[] {
            new Frame(stripBytes, dimmers), new Frame(stripBytes, dimmers), new Frame(stripBytes, dimmers)
        };
    }

    /**
     * The frame to fill next. For the filling thread only.
     *
     * @return a frame that nothing else sees until {@link #publish}
     */
    public Frame back() {
        return frames[back];
    }

    /** Puts the filled frame into the slot without a known time. For the filling thread only. */
    public void publish() {
        publish(Long.MIN_VALUE);
    }

    /**
     * Puts the filled frame into the slot, replacing any that has not been taken. For the filling thread only.
     *
     * @param made when it was made, in ns of the link's clock
     */
    public void publish(long made) {
        madeAt[back] = made;
        int replaced = middle.getAndSet(back | FRESH);
        if ((replaced & FRESH) != 0) {
            skipped.lazySet(skipped.getPlain() + 1);
        }
        back = replaced & INDEX;
    }

    /**
     * Whether there is a frame that has not been taken.
     *
     * @return true from {@link #publish} to {@link #take}
     */
    public boolean fresh() {
        return (middle.get() & FRESH) != 0;
    }

    /**
     * What happens to the frames that are taken.
     *
     * @return the same each time
     */
    public Deliveries deliveries() {
        return deliveries;
    }

    /** When the last taken frame was made. For the taking thread only. */
    long takenMadeAt() {
        return madeAt[front];
    }

    /**
     * How many frames were replaced by a newer one before they were taken.
     *
     * @return a count since the start
     */
    public long skipped() {
        return skipped.get();
    }

    /**
     * Takes the newest frame. For the taking thread only.
     *
     * @return the frame, which is valid until the next call; the same as before if none is {@link #fresh}
     */
    public Frame take() {
        if (fresh()) {
            front = middle.getAndSet(front) & INDEX;
        }
        return frames[front];
    }
}
