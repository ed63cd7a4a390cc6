package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import java.util.Optional;

/** Describes which pixels of a zone a layer covers. Immutable; one description makes as many extents as are asked for. */
public sealed interface ExtentSpec permits AllExtent, BarExtent, PointerExtent, BandExtent, GrainsExtent {
    /**
     * Makes the extent.
     *
     * @return a new one, for one layer
     */
    Extent make();

    /**
     * The signal that it follows.
     *
     * @return the signal and its bounds; empty if it follows none
     */
    default Optional<Follow> follows() {
        return Optional.empty();
    }
}
