package dev.lampwright.look;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What looks are made for.
 *
 * @param pixels pixels of the strip
 * @param zones the named parts of the strip; a plain colour strip on dimmers is a zone of one pixel beyond the strip's last
 * @param dimmers what each dimmer is for, from the controller's first to the last in use
 */
public record Fitting(int pixels, Map<String, Zone> zones, List<DimmerUse> dimmers) {
    /** Keeps copies of the collections, in their order. */
    public Fitting {
        zones = Collections.unmodifiableMap(new LinkedHashMap<>(zones));
        dimmers = List.copyOf(dimmers);
    }

    /**
     * What one dimmer is for.
     *
     * @param name name of the white light, or of the plain colour strip that it is one channel of; empty if nothing is connected to the
     *     dimmer
     * @param colourPixel pixel of the canvas that a plain colour strip shows; −1 for a white light
     * @param channel 0 red, 1 green, 2 blue; 0 for a white light
     */
    public record DimmerUse(String name, int colourPixel, int channel) {
        /**
         * A white light.
         *
         * @param name its name
         * @return the use
         */
        public static DimmerUse white(String name) {
            return new DimmerUse(name, -1, 0);
        }

        /**
         * A dimmer without a light, below others that have one. It stays dark and has no name.
         *
         * @return the use
         */
        public static DimmerUse none() {
            return new DimmerUse("", -1, 0);
        }

        /**
         * Whether a light is connected to the dimmer.
         *
         * @return false for {@link #none}
         */
        public boolean isUsed() {
            return !name.isEmpty();
        }

        /**
         * Whether this is a white light with its own level.
         *
         * @return false for a channel of a plain colour strip
         */
        public boolean isWhite() {
            return isUsed() && !isColour();
        }

        /**
         * Whether this is a channel of a plain colour strip.
         *
         * @return false for a white light
         */
        public boolean isColour() {
            return colourPixel >= 0;
        }
    }

    /**
     * A canvas for this.
     *
     * @return a dark one, with one more pixel for each plain colour strip
     */
    public Canvas canvas() {
        return new Canvas(canvasPixels(), dimmers.size());
    }

    /**
     * How many pixels a canvas for this has.
     *
     * @return those of the strip, and one for each plain colour strip
     */
    public int canvasPixels() {
        int most = dimmers.stream().mapToInt(DimmerUse::colourPixel).max().orElse(-1);
        return Math.max(pixels, most + 1);
    }

    /**
     * The names of what is connected to the dimmers.
     *
     * @return each once, from the controller's first dimmer on
     */
    public List<String> dimmerNames() {
        return dimmers.stream()
                .filter(DimmerUse::isUsed)
                .map(DimmerUse::name)
                .distinct()
                .toList();
    }
}
