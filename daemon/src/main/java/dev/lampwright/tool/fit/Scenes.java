package dev.lampwright.tool.fit;

import java.util.List;
import java.util.Map;

/** The scenes of the fitting. Levels are 0 to 255; letters name the channels of a pixel that are lit, for example {@code RGB}. */
final class Scenes {
    private static final double SLOWEST_RUN_S = 6;
    private static final double QUICKEST_RUN_S = 2.5;
    private static final double PIXELS_A_SECOND = 12;
    private static final double FULL_DUTY = 65_535;

    private Scenes() {}

    /** Some bytes of the strip, whatever they control. Those beyond the frame are left out. */
    static Scene bytes(int level, List<Integer> places) {
        return (seconds, frame) -> places.stream()
                .filter(place -> place < frame.strip().length)
                .forEach(place -> frame.strip()[place] = (byte) level);
    }

    /** Some pixels, each with its own channels. */
    static Scene pixels(String order, int level, Map<Integer, String> letters) {
        return (seconds, frame) ->
                letters.forEach((pixel, channels) -> light(order, level, pixel, channels, frame.strip()));
    }

    /** All pixels from one to another, both included. */
    static Scene stretch(String order, int level, int from, int to, String letters) {
        return (seconds, frame) -> {
            for (int pixel = from; pixel <= to; pixel++) {
                light(order, level, pixel, letters, frame.strip());
            }
        };
    }

    /**
     * A few pixels that run from one end to another, repeatedly, slowly enough not to flash.
     *
     * @param first where the run begins
     * @param last where it ends; lower than {@code first} if it runs towards the controller
     */
    static Scene band(String order, int level, int first, int last, String letters) {
        int length = Math.abs(last - first) + 1;
        int step = Integer.signum(last - first);
        int width = bandWidth(first, last);
        double runSeconds = Math.max(QUICKEST_RUN_S, Math.min(SLOWEST_RUN_S, length / PIXELS_A_SECOND));
        return (seconds, frame) -> {
            int head = (int) Math.floor((seconds / runSeconds) % 1 * (length + width));
            for (int place = Math.max(0, head - width + 1); place <= Math.min(length - 1, head); place++) {
                light(order, level, first + step * place, letters, frame.strip());
            }
        };
    }

    /** How many pixels of a {@link #band} are lit at most. */
    static int bandWidth(int first, int last) {
        return Math.max(1, Math.min(6, (Math.abs(last - first) + 1) / 4));
    }

    /** One dimmer. */
    static Scene dimmer(int index, double share) {
        return (seconds, frame) -> frame.duties()[index] = (int) (share * FULL_DUTY);
    }

    private static void light(String order, int level, int pixel, String letters, byte[] strip) {
        int at = pixel * order.length();
        for (int i = 0; i < letters.length() && at + order.length() <= strip.length; i++) {
            strip[at + order.indexOf(letters.charAt(i))] = (byte) level;
        }
    }
}
