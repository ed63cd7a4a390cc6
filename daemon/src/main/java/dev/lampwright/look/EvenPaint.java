package dev.lampwright.look;

import dev.lampwright.colour.Gradient;

/**
 * One colour everywhere.
 *
 * @param colours the colours to choose from
 * @param level where in them to look
 */
record EvenPaint(Gradient colours, Level level) implements Paint {
    @Override
    public void paint(Moment moment, float[] rgba, int pixels) {
        double share = level.at(moment);
        colours.colour(share, rgba, 0);
        rgba[3] = colours.alpha(share);
        for (int i = 1; i < pixels; i++) {
            System.arraycopy(rgba, 0, rgba, 4 * i, 4);
        }
    }
}
