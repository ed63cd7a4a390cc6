package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import java.util.Optional;

/** Describes which pixels of a zone a layer covers. Immutable; one description can make any number of extents. */
public sealed interface ExtentSpec permits AllExtent, BarExtent, PointerExtent, BandExtent, GrainsExtent {
    /**
     * Creates the extent.
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
