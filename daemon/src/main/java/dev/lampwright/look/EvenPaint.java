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
        fill(colours, level.at(moment), rgba, pixels);
    }

    /** Gives every place the colour that stands at a share of some colours. */
    static void fill(Gradient colours, double share, float[] rgba, int pixels) {
        colours.colourAndAlpha(share, rgba, 0);
        float red = rgba[0];
        float green = rgba[1];
        float blue = rgba[2];
        float alpha = rgba[3];
        for (int at = 4; at < 4 * pixels; at += 4) {
            rgba[at] = red;
            rgba[at + 1] = green;
            rgba[at + 2] = blue;
            rgba[at + 3] = alpha;
        }
    }
}
