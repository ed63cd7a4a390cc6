package dev.lampwright.look;

import dev.lampwright.signal.Signal;
import java.util.Arrays;

/** The extents. Ends that fall inside a pixel are drawn as partial cover, so slow movement has no steps. */
final class Extents {
    private Extents() {}

    /**
     * Every pixel.
     *
     * @return the extent
     */
    static Extent all() {
        return (moment, cover, pixels) -> Arrays.fill(cover, 0, pixels, 1);
    }

    /**
     * A bargraph: from where the zone begins as far as a signal says; nothing while it is unknown.
     *
     * @param by the signal
     * @return the extent
     */
    static Extent bar(Signal by) {
        return (moment, cover, pixels) -> {
            double value = moment.value(by);
            span(cover, pixels, 0, Double.isNaN(value) ? 0 : value * pixels);
        };
    }

    /**
     * A mark that stands where a signal says, its middle never outside the zone; nothing while it is unknown.
     *
     * @param by the signal
     * @param width width of the mark, in pixels
     * @return the extent
     */
    static Extent pointer(Signal by, double width) {
        return (moment, cover, pixels) -> {
            double value = moment.value(by);
            double middle = value * pixels;
            boolean unknown = Double.isNaN(value);
            span(cover, pixels, unknown ? 0 : middle - width / 2, unknown ? 0 : middle + width / 2);
        };
    }

    /** Covers what lies between two places, counted in pixels from where the zone begins. */
    private static void span(float[] cover, int pixels, double from, double to) {
        for (int i = 0; i < pixels; i++) {
            cover[i] = (float) Math.max(0, Math.min(to, i + 1) - Math.max(from, i));
        }
    }
}
