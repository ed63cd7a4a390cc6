package dev.lampwright.desk;

import java.util.Optional;

/**
 * What the configuration says about asking.
 *
 * @param prefix beginning of the daemon's own topics, without a slash at its end
 * @param brightness share of the light that looks ask for, 0 to 1, until somebody asks for another
 * @param quietHours when all light is dimmed; empty for never
 */
public record DeskSettings(String prefix, double brightness, Optional<QuietHours> quietHours) {
    /** What there is without a word of configuration. */
    public static final DeskSettings USUAL = new DeskSettings("lampwright", 1, Optional.empty());
}
