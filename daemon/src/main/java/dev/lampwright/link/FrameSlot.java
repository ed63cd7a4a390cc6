package dev.lampwright.link;

import dev.lampwright.protocol.Frame;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The single slot between the frame loop and the link, where the newest frame wins. One thread fills, one thread takes; neither
 * ever waits for the other, and nothing is allocated: three frames change places.
 */
public final class FrameSlot {
    private static final int FRESH = 4;
    private static final int INDEX = 3;

    private final Frame[] frames;
    private final AtomicInteger middle = new AtomicInteger(1);
    private int back;
    private int front = 2;

    /**
     * Makes a slot that is empty.
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
     * @return a frame that nobody else sees until {@link #publish}
     */
    public Frame back() {
        return frames[back];
    }

    /** Puts the filled frame into the slot, in place of any that has not been taken. For the filling thread only. */
    public void publish() {
        back = middle.getAndSet(back | FRESH) & INDEX;
    }

    /**
     * Whether a frame is there that has not been taken.
     *
     * @return true from {@link #publish} to {@link #take}
     */
    public boolean fresh() {
        return (middle.get() & FRESH) != 0;
    }

    /**
     * Takes the newest frame. For the taking thread only.
     *
     * @return the frame, which stays as it is until the next call; the same as before if none is {@link #fresh}
     */
    public Frame take() {
        if (fresh()) {
            front = middle.getAndSet(front) & INDEX;
        }
        return frames[front];
    }
}
