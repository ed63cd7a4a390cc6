package dev.lampwright.tool.plan;

import java.util.List;

/** Cautions to read before any work starts. */
public final class Cautions {
    /** One sentence each, the most pressing first. */
    public static final List<String> ALL = List.of(
            "Switch off and unplug before wiring, and before you touch any wire.",
            "Leave the mains side of a supply to people licensed for it, and follow local codes: use an enclosed, approved supply.",
            "Fuse the low-voltage side, close to the supply, to protect the wire after it.",
            "The light is an aid, not a safety device: it does not replace thermal protection, a smoke alarm or supervision.",
            "Flashing light can harm people with photosensitive epilepsy.",
            "Do not look into bright LEDs.",
            "The figures are calculated, not measured. Measure voltage and warmth once it is lit, and trust the meter.");

    private Cautions() {}
}
