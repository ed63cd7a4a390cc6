package dev.lampwright.look;

import dev.lampwright.colour.Gradient;

/** One colour everywhere. */
final class EvenPaint implements Paint {
    private final Gradient colours;
    private final Share share;
    private final float[] colour = new float[4];

    /** A position in a range of colours. */
    interface Share {
        /**
         * The position at a moment.
         *
         * @param moment the time and the signals
         * @param pixels length of the zone
         * @return 0 to 1
         */
        double at(Moment moment, int pixels);

        /** How long the position stays, as in {@link Paint#stillFor}. */
        long stillFor(Moment moment);
    }

    /**
     * Creates one.
     *
     * @param colours the colours to choose from
     * @param share the position in them
     */
    EvenPaint(Gradient colours, Share share) {
        this.colours = colours;
        this.share = share;
    }

    /** A paint whose position in the colours is a level. */
    static EvenPaint at(Gradient colours, Level level) {
        return new EvenPaint(colours, new Share() {
            @Override
            public double at(Moment moment, int pixels) {
                return level.at(moment);
            }

            @Override
            public long stillFor(Moment moment) {
                return level.stillFor(moment);
            }
        });
    }

    @Override
    public float[] paint(Moment moment, Cover cover, float[] room) {
        colours.colourAndAlpha(share.at(moment, cover.pixels()), colour, 0);
        return colour;
    }

    @Override
    public long stillFor(Moment moment) {
        return share.stillFor(moment);
    }

    @Override
    public boolean isEven() {
        return true;
    }
}
