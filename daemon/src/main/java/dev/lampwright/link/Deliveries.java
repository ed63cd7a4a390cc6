package dev.lampwright.link;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What becomes of frames on their way to the light: how late they are shown, and whether the controller may have gone dark and come back
 * meanwhile. The link's thread writes, the frame loop takes; neither waits, nothing is allocated.
 */
public final class Deliveries {
    private static final int SEQUENCES = 256;
    private static final long UNKNOWN = Long.MIN_VALUE;

    private final long[] madeAt = new long[SEQUENCES];
    private final AtomicLong latest = new AtomicLong();
    private final AtomicBoolean relit = new AtomicBoolean();

    Deliveries() {
        Arrays.fill(madeAt, UNKNOWN);
    }

    /**
     * The last part of a frame was sent.
     *
     * @param sequence sequence number of the message, 0 to 255
     * @param made when the frame was made, in ns of the link's clock
     */
    void sent(int sequence, long made) {
        madeAt[sequence] = made;
    }

    /**
     * The controller shows a frame. An answer that comes after its message was given up counts too.
     *
     * @param sequence sequence number of the message with its last part, 0 to 255
     * @param now ns of the link's clock
     */
    void shown(int sequence, long now) {
        if (madeAt[sequence] != UNKNOWN) {
            latest.accumulateAndGet(now - madeAt[sequence], Math::max);
            madeAt[sequence] = UNKNOWN;
        }
    }

    /** The controller is about to be lit, whatever it showed before. */
    void relit() {
        Arrays.fill(madeAt, UNKNOWN);
        relit.set(true);
    }

    /**
     * The longest delay of a frame that was shown since this was last asked.
     *
     * @return ns from when it was made until the controller had said that it is shown; 0 if none was
     */
    public long takeLatest() {
        return latest.get() == 0 ? 0 : latest.getAndSet(0);
    }

    /**
     * Whether the controller may have gone dark and come back since this was last asked.
     *
     * @return true once for each time that the link lights a controller
     */
    public boolean takeRelit() {
        return relit.get() && relit.getAndSet(false);
    }
}
