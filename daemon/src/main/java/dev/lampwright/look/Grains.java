package dev.lampwright.look;

import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * Seeded points that come and go. Each pixel has turns of its own, as long as a glint, that begin at a moment of its own; in each
 * turn chance decides whether it is lit. The light rises and falls as the square of a sine.
 */
final class Grains implements Extent {
    private final double density;
    private final double glintSeconds;
    private final long seed;
    private long[] chances = {};
    private double[] begins = {};

    /**
     * Makes points.
     *
     * @param density share of the turns in which a pixel is lit, 0 to 1
     * @param glintSeconds length of a turn, in s
     * @param seed what decides
     */
    Grains(double density, double glintSeconds, long seed) {
        this.density = density;
        this.glintSeconds = glintSeconds;
        this.seed = seed;
    }

    @Override
    public void cover(Moment moment, float[] cover, int pixels) {
        makeRoom(pixels);
        double turns = moment.seconds() / glintSeconds;
        for (int i = 0; i < pixels; i++) {
            double own = turns + begins[i];
            long turn = (long) own;
            cover[i] = Chance.share(chances[i], turn) < density ? glint(own - turn) : 0;
        }
    }

    private void makeRoom(int pixels) {
        if (pixels > chances.length) {
            chances = LongStream.range(0, pixels).map(i -> Chance.root(seed, i)).toArray();
            begins = IntStream.range(0, pixels)
                    .mapToDouble(i -> Chance.share(seed, i, -1))
                    .toArray();
        }
    }

    private static float glint(double phase) {
        double wave = Math.sin(Math.PI * phase);
        return (float) (wave * wave);
    }
}
