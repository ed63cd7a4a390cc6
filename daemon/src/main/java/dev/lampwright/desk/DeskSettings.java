package dev.lampwright.desk;

import java.util.Optional;

/**
 * What the configuration says about asking.
 *
 * @param brightness share of the light that looks ask for, 0 to 1, until somebody asks for another
 * @param quietHours when all light is dimmed; empty for never
 * @param keep whether what is asked for is kept for the next run
 */
public record DeskSettings(double brightness, Optional<QuietHours> quietHours, boolean keep) {
    /** What there is without a word of configuration. */
    public static final DeskSettings USUAL = new DeskSettings(1, Optional.empty(), false);

    /** Share of the light that is left while it is quiet, 0 to 1. */
    float quietLight() {
        return (float)
                quietHours.map(QuietHours::light).orElse(QuietHours.USUAL_LIGHT).doubleValue();
    }
}
