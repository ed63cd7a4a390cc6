package dev.lampwright.tool.picture;

import dev.lampwright.look.Fitting;
import java.util.List;

/**
 * Shots at equal intervals.
 *
 * @param subject the subject of the shots
 * @param shotsPerSecond how many per second
 * @param shots the earliest first; not empty
 */
public record Film(Subject subject, double shotsPerSecond, List<Shot> shots) {
    /**
     * The subject of a picture.
     *
     * @param title the title of the picture, in a few words
     * @param note a note about it, in a few words; may be empty
     * @param fitting the strip, its zones and its dimmers
     * @param order the strip's order of channels
     */
    public record Subject(String title, String note, Fitting fitting, String order) {}

    /** What the lights showed at one time, or on average over a short one. Immutable. */
    static final class Shot {
        private final int[] strip;
        private final int[] lamps;
        private final String caption;

        /**
         * Creates a shot.
         *
         * @param strip colour of each pixel of the strip, as {@code 0xRRGGBB} in sRGB; kept
         * @param lamps colour of each lamp; kept
         * @param caption what was happening
         */
        Shot(int[] strip, int[] lamps, String caption) {
            this.strip = strip;
            this.lamps = lamps;
            this.caption = caption;
        }

        /** The colour of a pixel of the strip, as {@code 0xRRGGBB} in sRGB. */
        int pixel(int index) {
            return strip[index];
        }

        /** The colour of a lamp, in the order of {@link Lamp#of}. */
        int lamp(int index) {
            return lamps[index];
        }

        /** What was happening; may be empty. */
        String caption() {
            return caption;
        }
    }

    /** Keeps a copy of the shots. */
    public Film {
        shots = List.copyOf(shots);
    }

    /**
     * How long the film is.
     *
     * @return s
     */
    double seconds() {
        return shots.size() / shotsPerSecond;
    }

    /**
     * How long a shot is shown in a GIF, which counts in 1/100 s. Rounding errors do not accumulate from shot to shot.
     *
     * @param index the shot, from 0
     * @return 1/100 s
     */
    int hundredths(int index) {
        return (int) (Math.round(100 * (index + 1) / shotsPerSecond) - Math.round(100 * index / shotsPerSecond));
    }
}
