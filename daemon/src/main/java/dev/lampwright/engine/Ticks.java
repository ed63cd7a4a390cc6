package dev.lampwright.engine;

import java.util.concurrent.TimeUnit;

/** The fixed time grid of frames. */
public final class Ticks {
    private static final long NANOS_PER_SECOND = TimeUnit.SECONDS.toNanos(1);

    private Ticks() {}

    /**
     * The time of a frame.
     *
     * @param tick the frame, 0 or more
     * @param framesPerSecond rate of the frames, 1 or more
     * @return ns since frame 0
     */
    public static long nanos(long tick, int framesPerSecond) {
        return tick / framesPerSecond * NANOS_PER_SECOND + tick % framesPerSecond * NANOS_PER_SECOND / framesPerSecond;
    }

    /**
     * The last frame up to a given time.
     *
     * @param nanos ns since frame 0, 0 or more
     * @param framesPerSecond rate of the frames, 1 or more
     * @return the frame
     */
    static long at(long nanos, int framesPerSecond) {
        return nanos / NANOS_PER_SECOND * framesPerSecond
                + nanos % NANOS_PER_SECOND * framesPerSecond / NANOS_PER_SECOND;
    }
}
