package dev.lampwright.look;

import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * Seeded points that come and go. Each pixel has turns of its own, as long as a glint, that begin at a moment of its own; in each
 * turn chance decides whether it is lit. The light rises and falls as the square of a sine.
 *
 * @param density share of the pixels that are lit at any time, 0 to 1
 * @param glintSeconds how long a point takes to come and go, in s
 * @param seed what decides where and when; the same seed gives the same points
 */
public record GrainsExtent(double density, double glintSeconds, long seed) implements ExtentSpec {
    @Override
    public Extent make() {
        return new Points(this);
    }

    /** The points, with what chance has decided about each pixel once and for all. */
    private static final class Points implements Extent {
        private final GrainsExtent grains;
        private long[] chances = {};
        private double[] begins = {};

        Points(GrainsExtent grains) {
            this.grains = grains;
        }

        @Override
        public void cover(Moment moment, float[] cover, int pixels) {
            makeRoom(pixels);
            double turns = moment.seconds() / grains.glintSeconds;
            for (int i = 0; i < pixels; i++) {
                double own = turns + begins[i];
                long turn = (long) own;
                cover[i] = Chance.share(chances[i], turn) < grains.density ? glint(own - turn) : 0;
            }
        }

        private void makeRoom(int pixels) {
            if (pixels > chances.length) {
                chances = LongStream.range(0, pixels)
                        .map(i -> Chance.root(grains.seed, i))
                        .toArray();
                begins = IntStream.range(0, pixels)
                        .mapToDouble(i -> Chance.share(grains.seed, i, -1))
                        .toArray();
            }
        }

        private static float glint(double phase) {
            double wave = Math.sin(Math.PI * phase);
            return (float) (wave * wave);
        }
    }
}
