package dev.lampwright.guard;

import dev.lampwright.protocol.SupplyDraw;
import java.util.Arrays;

/**
 * How much lights are dimmed, frame after frame: down at once, up gently and only if the need has passed. The factor is never above the
 * lowest that was needed in any frame of the last {@value #HOLD_SECONDS} seconds, so light that crosses the limit back and forth within
 * that time is dimmed evenly. When that minimum rises, the factor follows in even steps. Allocates nothing.
 */
final class Recovery {
    /** Our own choice: longer than the periods of usual rhythms. */
    static final int HOLD_SECONDS = 10;

    private final long[] least = new long[HOLD_SECONDS + 1];
    private final int framesPerSecond;
    private final long rise;
    private int second;
    private int frames;
    private long factor = SupplyDraw.WHOLE;

    /**
     * Creates one that dims nothing.
     *
     * @param framesPerSecond rate of the frames, 1 or more
     * @param riseSeconds time from dark to full, above 0
     * @throws IllegalArgumentException if the rate or the time is out of its range
     */
    Recovery(int framesPerSecond, double riseSeconds) {
        if (framesPerSecond < 1 || !(riseSeconds > 0)) {
            throw new IllegalArgumentException(framesPerSecond + " frames a second, up again in " + riseSeconds + " s");
        }
        this.framesPerSecond = framesPerSecond;
        rise = Math.max(1, (long) (SupplyDraw.WHOLE / (riseSeconds * framesPerSecond)));
        Arrays.fill(least, SupplyDraw.WHOLE);
    }

    /**
     * The factor for the next frame.
     *
     * @param needed the highest that this frame allows, 0 to {@link SupplyDraw#WHOLE}
     * @return 0 to {@code needed}
     */
    long next(long needed) {
        if (frames == framesPerSecond) {
            frames = 0;
            second = (second + 1) % least.length;
            least[second] = SupplyDraw.WHOLE;
        }
        frames++;
        least[second] = Math.min(least[second], needed);
        factor = Math.min(leastOfAll(), factor + rise);
        return factor;
    }

    /** Passes a frame that needs the same factor as the previous one, which was granted. */
    void pass() {
        if (frames == framesPerSecond) {
            frames = 0;
            second = (second + 1) % least.length;
            least[second] = factor;
        }
        frames++;
    }

    private long leastOfAll() {
        long all = SupplyDraw.WHOLE;
        for (long one : least) {
            all = Math.min(all, one);
        }
        return all;
    }
}
