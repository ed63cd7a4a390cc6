package dev.lampwright.tool.fit;

import java.util.List;

/** What is to be said before anything is lit. */
final class FittingCautions {
    static final List<String> LINES = List.of(
            "Guided fitting: each step lights something and asks what you see.",
            "",
            "Before you begin:",
            "  - Switch off and unplug before wiring, and before you touch a wire that is there.",
            "  - The mains side of a supply is for people licensed to do it; local codes come first.",
            "  - Fuse the low-voltage side, close to the supply.",
            "  - The light is an aid and no safety device.",
            "  - Flashing light can harm people with photosensitive epilepsy. Nothing here flashes more than three times a"
                    + " second.",
            "  - Do not look into bright LEDs; look at what they light, or from the side.",
            "",
            "Until the supply is known, no more than " + Setups.SAFE_CEILING + " mA is asked for.",
            FittingBench.KEYS);

    private FittingCautions() {}
}
