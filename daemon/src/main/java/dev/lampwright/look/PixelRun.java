package dev.lampwright.look;

/**
 * A run of neighbouring pixels with a direction. Pixel 0 of the strip is nearest the controller.
 *
 * @param first pixel of the strip where the run begins
 * @param last pixel of the strip where it ends; lower than {@code first} if it runs towards the controller
 */
public record PixelRun(int first, int last) {
    /**
     * How many pixels the run has.
     *
     * @return 1 or more
     */
    public int length() {
        return Math.abs(last - first) + 1;
    }

    /**
     * The pixel of the strip that is at some place of the run.
     *
     * @param index 0 to {@link #length} − 1
     * @return index on the strip
     */
    public int pixel(int index) {
        return first <= last ? first + index : first - index;
    }
}
