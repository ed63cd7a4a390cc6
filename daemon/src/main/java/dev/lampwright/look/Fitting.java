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
 * @param dimmers what each dimmer in use is for, from the controller's first on
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
     * @param name name of the white light, or of the plain colour strip that it is one channel of
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
         * Whether this is a white light with a level of its own.
         *
         * @return false for a channel of a plain colour strip
         */
        public boolean isWhite() {
            return colourPixel < 0;
        }
    }

    /**
     * A canvas for this.
     *
     * @return a dark one, with a pixel more for each plain colour strip
     */
    public Canvas canvas() {
        int most = dimmers.stream().mapToInt(DimmerUse::colourPixel).max().orElse(-1);
        return new Canvas(Math.max(pixels, most + 1), dimmers.size());
    }

    /**
     * The names of what hangs on the dimmers.
     *
     * @return each once, from the controller's first dimmer on
     */
    public List<String> dimmerNames() {
        return dimmers.stream().map(DimmerUse::name).distinct().toList();
    }
}
