package dev.lampwright.desk;

import java.util.Optional;

/**
 * The configuration of asks.
 *
 * @param brightness share of the light that looks ask for, 0 to 1, until somebody asks for a different one
 * @param quietHours when all light is dimmed; empty if never
 * @param keep whether what is asked for is kept for the next run
 */
public record DeskSettings(double brightness, Optional<QuietHours> quietHours, boolean keep) {
    /** The defaults. */
    public static final DeskSettings USUAL = new DeskSettings(1, Optional.empty(), false);

    /** Share of the light that is left while it is quiet, 0 to 1. */
    float quietLight() {
        return (float)
                quietHours.map(QuietHours::light).orElse(QuietHours.USUAL_LIGHT).doubleValue();
    }
}
