package dev.lampwright.look;

import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * The turns in which the grains of a zone come and go, each pixel's from a moment of its own. Of the same glint and the same seed, paint and
 * extent of a layer see the same turns. Makes room once for each length of zone; for one layer.
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
     * Makes them.
     *
     * @param glintSeconds how long a point takes to come and go, in s, above 0
     * @param seed what decides where and when
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
     * Moves on.
     *
     * @param seconds since the look came on
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

    /** How many turns of a pixel are over, with the share that has passed of the one it is in. */
    double own(int pixel) {
        return turns + begins[pixel];
    }

    /** Whether chance lights a turn of a pixel, by the {@link Chance#limit} of its likelihood. */
    boolean isLit(int pixel, long turn, long limit) {
        return Chance.happens(chances[pixel], turn, limit);
    }

    /** What chance says about something else of the same turn. */
    double otherChance(int pixel, long turn) {
        return Chance.share(~chances[pixel], turn);
    }
}
