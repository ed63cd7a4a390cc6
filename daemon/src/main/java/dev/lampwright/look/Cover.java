package dev.lampwright.look;

import java.util.Arrays;

/**
 * How far a layer covers the places of its zone: those from one up to another are covered as far as is written here, all others not at
 * all. So a layer costs what it reaches. Made once and used for one layer after the other.
 */
public final class Cover {
    private final float[] room;
    private final float[] ones;
    private int pixels;
    private int from;
    private int to;
    private boolean even;

    /**
     * Makes room.
     *
     * @param mostPixels length of the longest zone
     */
    public Cover(int mostPixels) {
        room = new float[mostPixels];
        ones = new float[] {1};
    }

    /**
     * Begins a layer, which reaches nothing yet.
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
     * Length of the zone.
     *
     * @return in pixels
     */
    public int pixels() {
        return pixels;
    }

    /** Covers all of the zone wholly. */
    void all() {
        from = 0;
        to = pixels;
        even = true;
    }

    /**
     * Reaches some places, none of which is covered until it is written.
     *
     * @param first the first of them, 0 or more
     * @param end the first behind them, up to the length of the zone
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

    /** The first place behind all that are reached; {@link #from} if none is. */
    int to() {
        return to;
    }

    /** Where the cover of a place stands; not to be written to. */
    float[] values() {
        return even ? ones : room;
    }

    /** How far it is there from a place to the next: 0 if one value is that of all. */
    int step() {
        return even ? 0 : 1;
    }
}
