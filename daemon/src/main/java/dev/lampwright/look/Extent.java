package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import java.util.Arrays;

/**
 * Which pixels of a zone a layer covers. Edges that fall inside a pixel are drawn as partial cover, and an edge may be softened, so
 * slow movement has no steps.
 */
public interface Extent {
    /**
     * Writes how far each pixel is covered.
     *
     * @param moment the time and the signals
     * @param cover 0 to 1 for each place of the zone, place 0 where it begins; every one is written
     * @param pixels length of the zone
     */
    void cover(Moment moment, float[] cover, int pixels);

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
     * @param by the signal and its bounds
     * @param softness width of its end, in pixels, 0 or more; near both ends of the zone it is less, so that nothing is cut off
     * @return the extent
     */
    static Extent bar(Follow by, double softness) {
        return (moment, cover, pixels) -> {
            double end = moment.share(by) * pixels;
            for (int i = 0; i < pixels; i++) {
                cover[i] = Edge.cover(1 - Edge.share(i, end, Math.min(softness, 2 * Math.min(end, pixels - end))));
            }
            if (Double.isNaN(end)) {
                Arrays.fill(cover, 0, pixels, 0);
            }
        };
    }

    /**
     * A mark that stands where a signal says, as far as it can without being cut off at an end; nothing while the signal is unknown.
     *
     * @param by the signal and its bounds
     * @param width width of the mark, in pixels
     * @param softness width of each of its edges, in pixels, 0 or more
     * @return the extent
     */
    static Extent pointer(Follow by, double width, double softness) {
        return (moment, cover, pixels) -> {
            double margin = Math.min(width + softness, pixels) / 2;
            double middle = Math.max(margin, Math.min(pixels - margin, moment.share(by) * pixels));
            for (int i = 0; i < pixels; i++) {
                cover[i] = Edge.cover(
                        Edge.share(i, middle - width / 2, softness) - Edge.share(i, middle + width / 2, softness));
            }
            if (Double.isNaN(middle)) {
                Arrays.fill(cover, 0, pixels, 0);
            }
        };
    }

    /**
     * A moving stretch with a fading tail, once in the zone or over and over.
     *
     * @param width width of the stretch, in pixels
     * @param tail length of its tail, in pixels, 0 or more; it lies where the stretch comes from
     * @param repeat from one stretch to the next, in pixels; 0 for the length of the zone
     * @param motion how it moves
     * @param softness width of its front, in pixels, 0 or more
     * @return the extent
     */
    static Extent band(double width, double tail, double repeat, Motion motion, double softness) {
        return new Band(width, tail, repeat, motion, softness);
    }

    /**
     * Seeded points that come and go.
     *
     * @param density share of the pixels that are lit at any time, 0 to 1
     * @param glintSeconds how long a point takes to come and go, in s
     * @param seed what decides where and when; the same seed gives the same points
     * @return the extent
     */
    static Extent grains(double density, double glintSeconds, long seed) {
        return new Grains(density, glintSeconds, seed);
    }
}
