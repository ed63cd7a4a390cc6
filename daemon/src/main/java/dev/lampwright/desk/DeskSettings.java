package dev.lampwright.desk;

import java.util.Optional;

/**
 * What the configuration says about asking.
 *
 * @param brightness share of the light that looks ask for, 0 to 1, until somebody asks for another
 * @param quietHours when all light is dimmed; empty for never
 */
public record DeskSettings(double brightness, Optional<QuietHours> quietHours) {
    /** What there is without a word of configuration. */
    public static final DeskSettings USUAL = new DeskSettings(1, Optional.empty());
}
