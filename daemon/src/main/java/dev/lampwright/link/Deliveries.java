package dev.lampwright.link;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What happens to frames on their way to the light: how late they are shown, and whether the controller may have gone dark and come back in
 * between. The link's thread writes, the frame loop reads; neither waits, nothing is allocated.
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
     * Records that the last part of a frame was sent.
     *
     * @param sequence sequence number of the message, 0 to 255
     * @param made when the frame was made, in ns of the link's clock
     */
    void sent(int sequence, long made) {
        madeAt[sequence] = made;
    }

    /**
     * Records that the controller shows a frame. An answer that comes after its message was given up counts too.
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

    /** Records that the controller is about to be lit, whatever it showed before. */
    void relit() {
        Arrays.fill(madeAt, UNKNOWN);
        relit.set(true);
    }

    /**
     * The longest delay of a frame shown since the last call.
     *
     * @return ns from when it was made until the controller reported it as shown; 0 if none was
     */
    public long takeLatest() {
        return latest.get() == 0 ? 0 : latest.getAndSet(0);
    }

    /**
     * Whether the controller may have gone dark and come back since the last call.
     *
     * @return true once for each time that the link lights a controller
     */
    public boolean takeRelit() {
        return relit.get() && relit.getAndSet(false);
    }
}
