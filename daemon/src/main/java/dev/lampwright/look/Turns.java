package dev.lampwright.look;

import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * The turns in which the grains of a zone appear and disappear, each pixel with its own starting time. With the same glint and seed, paint
 * and extent of a layer see the same turns. Allocates once for each zone length; for one layer.
 */
final class Turns {
    /** A pixel flashes twice a second at most: the flash limit is three, and eight neighbours are judged together. Our own choice. */
    private static final double SHORTEST_S = 0.5;

    private final double turnSeconds;
    private final long seed;
    private long[] chances = {};
    private double[] begins = {};
    private double turns;

    /**
     * Creates them.
     *
     * @param glintSeconds how long a point takes to appear and disappear, in s, above 0
     * @param seed determines where and when
     */
    Turns(double glintSeconds, long seed) {
        turnSeconds = Math.max(SHORTEST_S, glintSeconds);
        this.seed = seed;
    }

    /** How long a turn lasts, in s. */
    double seconds() {
        return turnSeconds;
    }

    /**
     * Advances to a time.
     *
     * @param seconds since the look started
     * @param pixels length of the zone
     */
    void moveTo(double seconds, int pixels) {
        turns = seconds / turnSeconds;
        if (pixels > chances.length) {
            chances = LongStream.range(0, pixels).map(i -> Chance.root(seed, i)).toArray();
            begins = IntStream.range(0, pixels)
                    .mapToDouble(i -> Chance.share(seed, i, -1))
                    .toArray();
        }
    }

    /** How many turns of a pixel are over, including the elapsed fraction of the current one. */
    double own(int pixel) {
        return turns + begins[pixel];
    }

    /** Whether a turn of a pixel is lit, by the {@link Chance#limit} of its probability. */
    boolean isLit(int pixel, long turn, long limit) {
        return Chance.happens(chances[pixel], turn, limit);
    }

    /** Another random number for the same turn. */
    double otherChance(int pixel, long turn) {
        return Chance.share(~chances[pixel], turn);
    }
}
