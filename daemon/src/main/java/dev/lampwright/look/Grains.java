package dev.lampwright.look;

/**
 * Seeded points that come and go. Each pixel has turns of its own, as long as a glint, that begin at a moment of its own; in each
 * turn chance decides whether it is lit. The light rises and falls as the square of a sine.
 *
 * @param density share of the turns in which a pixel is lit, 0 to 1
 * @param glintSeconds length of a turn, in s
 * @param seed what decides
 */
record Grains(double density, double glintSeconds, long seed) implements Extent {
    @Override
    public void cover(Moment moment, float[] cover, int pixels) {
        double turns = moment.seconds() / glintSeconds;
        for (int i = 0; i < pixels; i++) {
            double own = turns + Chance.share(seed, i, -1);
            long turn = (long) Math.floor(own);
            cover[i] = Chance.share(seed, i, turn) < density ? glint(own - turn) : 0;
        }
    }

    private static float glint(double phase) {
        double wave = Math.sin(Math.PI * phase);
        return (float) (wave * wave);
    }
}
