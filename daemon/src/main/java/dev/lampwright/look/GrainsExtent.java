package dev.lampwright.look;

/**
 * Seeded points that come and go. Each pixel has its own turns, with its own starting time; in each turn it is lit at random. The light
 * rises and falls as the square of a sine. A turn lasts as long as a glint, but at least half a second, so that short glints of one pixel
 * do not follow each other more than twice a second; such a glint begins its turn.
 *
 * @param density share of the pixels that are lit at any time, 0 to 1; of glints shorter than half a second, twice their length in s at
 *     most
 * @param glintSeconds how long a point takes to appear and disappear, in s
 * @param seed determines where and when; the same seed gives the same points
 */
public record GrainsExtent(double density, double glintSeconds, long seed) implements ExtentSpec {
    @Override
    public Extent make() {
        return new Points(this);
    }

    /** The points. */
    private static final class Points implements Extent {
        private final Turns turns;
        private final long limit;
        private final double glintsATurn;

        Points(GrainsExtent grains) {
            turns = new Turns(grains.glintSeconds, grains.seed);
            glintsATurn = turns.seconds() / grains.glintSeconds;
            limit = Chance.limit(grains.density * glintsATurn);
        }

        @Override
        public void cover(Moment moment, Cover cover) {
            int pixels = cover.pixels();
            float[] covered = cover.reach(0, pixels);
            turns.moveTo(moment.seconds(), pixels);
            for (int i = 0; i < pixels; i++) {
                double own = turns.own(i);
                long turn = (long) own;
                double phase = (own - turn) * glintsATurn;
                if (phase < 1 && turns.isLit(i, turn, limit)) {
                    covered[i] = glint(phase);
                }
            }
        }

        private static float glint(double phase) {
            double wave = Math.sin(Math.PI * phase);
            return (float) (wave * wave);
        }
    }
}
