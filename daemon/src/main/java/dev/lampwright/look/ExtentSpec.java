package dev.lampwright.look;

/** Describes which pixels of a zone a layer covers. Immutable; one description makes as many extents as are asked for. */
public sealed interface ExtentSpec permits AllExtent, BarExtent, PointerExtent, BandExtent, GrainsExtent {
    /**
     * Makes the extent.
     *
     * @return a new one, for one layer
     */
    Extent make();
}
