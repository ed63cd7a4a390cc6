package dev.lampwright.engine;

import dev.lampwright.look.Canvas;

/**
 * The fade to dark before the daemon ends. The remaining share of the light falls as the square of the remaining time, so that the fade
 * looks even (common practice, no source).
 */
final class Ending {
    private final long fromNanos;
    private final long nanos;

    /**
     * Plans a fade.
     *
     * @param fromNanos when it begins, on the clock of the frames
     * @param nanos how long it takes, more than 0
     * @throws IllegalArgumentException if it takes no time
     */
    Ending(long fromNanos, long nanos) {
        if (nanos <= 0) {
            throw new IllegalArgumentException("a fade of " + nanos + " ns; give more than 0");
        }
        this.fromNanos = fromNanos;
        this.nanos = nanos;
    }

    /**
     * Dims the light.
     *
     * @param canvas the light of a frame
     * @param atNanos the time of the frame
     */
    void dim(Canvas canvas, long atNanos) {
        double left = 1 - Math.max(0, Math.min(1, (double) (atNanos - fromNanos) / nanos));
        canvas.dim((float) (left * left));
    }

    /**
     * Whether it is dark.
     *
     * @param atNanos the time of the frame
     * @return true from the end of the fade on
     */
    boolean isOver(long atNanos) {
        return atNanos - fromNanos >= nanos;
    }
}
