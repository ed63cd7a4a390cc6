package dev.lampwright.look;

import java.util.Arrays;

/**
 * How much a layer covers each place of its zone: the places of one range as written here, all others not at all. So a layer costs only
 * what it reaches. Created once and reused for each layer.
 */
public final class Cover {
    private final float[] room;
    private final float[] ones;
    private int pixels;
    private int from;
    private int to;
    private boolean even;

    /**
     * Allocates memory.
     *
     * @param mostPixels length of the longest zone
     */
    public Cover(int mostPixels) {
        room = new float[mostPixels];
        ones = new float[] {1};
    }

    /**
     * Starts a layer, which reaches nothing yet.
     *
     * @param length length of its zone, up to that of the longest
     */
    void begin(int length) {
        pixels = length;
        from = 0;
        to = 0;
        even = false;
    }

    /**
     * The length of the zone.
     *
     * @return in pixels
     */
    public int pixels() {
        return pixels;
    }

    /** Covers the whole zone fully. */
    void all() {
        from = 0;
        to = pixels;
        even = true;
    }

    /**
     * Selects the range of places that are reached; none is covered until it is written.
     *
     * @param first the first of them, 0 or more
     * @param end the first after them, up to the length of the zone
     * @return where to write 0 to 1 for each, place 0 of the zone at index 0
     */
    float[] reach(int first, int end) {
        from = first;
        to = Math.max(first, end);
        even = false;
        Arrays.fill(room, from, to, 0);
        return room;
    }

    /** The first place that is reached. */
    int from() {
        return from;
    }

    /** The first place after those that are reached; {@link #from} if none is. */
    int to() {
        return to;
    }

    /** The covers, by place; must not be written to. */
    float[] values() {
        return even ? ones : room;
    }

    /** The step from one place to the next in {@link #values}: 0 if all share one value. */
    int step() {
        return even ? 0 : 1;
    }
}
