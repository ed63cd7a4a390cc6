package dev.lampwright.look;

/** Describes what colour the pixels of a zone have. Immutable; one description makes as many paints as are asked for. */
public sealed interface PaintSpec permits SolidPaint, ScalePaint, RampPaint, PalettePaint, EmberPaint {
    /**
     * Makes the paint.
     *
     * @return a new one that remembers nothing, for one layer
     */
    Paint make();
}
