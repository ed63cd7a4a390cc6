package dev.lampwright.soak;

import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.testing.Recording.Entry;
import java.util.Optional;

/** Is the current of every frame under the ceiling? Reckoned in whole numbers as {@code firmware-notes/wire.md} has it, section 4. */
final class CeilingCheck {
    private static final long UNITS = 65_535;
    private static final long BYTE_STEP = 257;

    private long mostMilliamps;

    /**
     * Judges what is shown.
     *
     * @param shown the controller's frame
     * @return what is wrong, if anything is
     */
    Optional<String> judge(Entry shown) {
        long strip = Rowan.PIXELS * Rowan.DARK_MICROAMPS * UNITS
                + shown.strip().stream().mapToLong(Integer::longValue).sum() * Rowan.CHANNEL_MICROAMPS * BYTE_STEP;
        long work = shown.duties().stream().mapToLong(Integer::longValue).sum() * Rowan.WORK_MILLIAMPS * 1000;
        mostMilliamps = Math.max(mostMilliamps, strip / (1000 * UNITS));
        if (shown.light() == Light.DIMMED) {
            return Optional.of("the controller had to dim a frame: " + shown);
        }
        if (strip > Rowan.CEILING_MILLIAMPS * 1000 * UNITS || work > Rowan.WORK_CEILING_MILLIAMPS * 1000 * UNITS) {
            return Optional.of("over the ceiling: " + shown);
        }
        return Optional.empty();
    }

    /** The most that any frame so far took from the strip's supply, in whole mA. */
    long mostMilliamps() {
        return mostMilliamps;
    }
}
