package dev.lampwright.look;

import dev.lampwright.colour.Gradient;

/**
 * Colours along the zone, the first where it begins. They may drift: what leaves at one end comes in at the other.
 *
 * @param colours from 0 to 1; for a drift without a seam the first and the last are alike
 * @param drift how they move
 */
public record RampPaint(Gradient colours, Motion drift) implements PaintSpec {
    @Override
    public Paint make() {
        return this::paint;
    }

    private void paint(Moment moment, float[] rgba, int pixels) {
        double offset = drift.travelled(moment.seconds(), pixels);
        for (int i = 0; i < pixels; i++) {
            double place = (i + 0.5 - offset) / pixels;
            double share = drift.speed() == 0 ? place : place - Math.floor(place);
            colours.colourAndAlpha(share, rgba, 4 * i);
        }
    }
}
