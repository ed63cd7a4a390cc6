package dev.lampwright.look;

import dev.lampwright.colour.Gradient;

/** One colour everywhere. */
final class EvenPaint implements Paint {
    private final Gradient colours;
    private final Share share;
    private final float[] colour = new float[4];

    /** Where in some colours to look. */
    @FunctionalInterface
    interface Share {
        /**
         * Tells it.
         *
         * @param moment the time and the signals
         * @param pixels length of the zone
         * @return 0 to 1
         */
        double at(Moment moment, int pixels);
    }

    /**
     * Makes one.
     *
     * @param colours the colours to choose from
     * @param share where in them to look
     */
    EvenPaint(Gradient colours, Share share) {
        this.colours = colours;
        this.share = share;
    }

    @Override
    public float[] paint(Moment moment, Cover cover, float[] room) {
        colours.colourAndAlpha(share.at(moment, cover.pixels()), colour, 0);
        return colour;
    }

    @Override
    public boolean isEven() {
        return true;
    }
}
