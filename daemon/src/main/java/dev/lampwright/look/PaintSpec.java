package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import java.util.Optional;

/** Describes what colour the pixels of a zone have. Immutable; one description can make any number of paints. */
public sealed interface PaintSpec permits SolidPaint, ScalePaint, RampPaint, PalettePaint, EmberPaint {
    /**
     * Makes the paint.
     *
     * @return a new one without any state, for one layer
     */
    Paint make();

    /**
     * The signal that it follows.
     *
     * @return the signal and its bounds; empty if it follows none
     */
    default Optional<Follow> follows() {
        return Optional.empty();
    }
}
