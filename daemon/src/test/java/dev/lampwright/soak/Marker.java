package dev.lampwright.soak;

import java.util.List;

/**
 * What a frame of the soak should show. To keep the ceiling, all light may be dimmed equally, for a while longer than needed; the colour
 * stays.
 *
 * @param state the state
 * @param edition whether the pixels that show the edition are lit
 */
record Marker(Rowan.State state, boolean edition) {
    /** The positions of red, green and blue in the three bytes of a pixel in the order GRB. */
    private static final int[] PLACES = {1, 0, 2};

    /** Full white demands 1110 mA and gets 600; anything darker than half of that share is not dimming by the ceiling. */
    private static final int LEAST = 60;

    /**
     * Whether a strip shows this.
     *
     * @param strip its bytes
     */
    boolean isOn(List<Integer> strip) {
        int level = strip.stream().mapToInt(Integer::intValue).max().orElse(0);
        boolean is = strip.size() == 3 * Rowan.PIXELS && level >= LEAST;
        boolean[] channels = state.channels();
        for (int pixel = 0; is && pixel < Rowan.PIXELS; pixel++) {
            boolean lit = edition || pixel >= Rowan.EDITION_PIXELS;
            for (int channel = 0; channel < 3; channel++) {
                int wanted = lit && channels[channel] ? level : 0;
                is &= Math.abs(strip.get(3 * pixel + PLACES[channel]) - wanted) <= 1;
            }
        }
        return is;
    }
}
