package dev.lampwright.testing;

import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.protocol.Setup;
import dev.lampwright.testing.Recording.Entry;
import java.util.Optional;

/** Is the current of every frame under the ceiling? Calculated in whole numbers by {@code firmware-notes/wire.md}, section 4. */
public final class CeilingCheck {
    private static final long UNITS = 65_535;
    private static final long BYTE_STEP = 257;

    private final Setup setup;
    private long mostMilliamps;

    /**
     * Starts with nothing judged.
     *
     * @param setup what is fitted, and its ceilings
     */
    public CeilingCheck(Setup setup) {
        this.setup = setup;
    }

    /**
     * Judges what is shown.
     *
     * @param shown the controller's frame, of this set-up, or one without dimmers from before it was set up
     * @return what is wrong, if anything is
     */
    public Optional<String> judge(Entry shown) {
        long[] used = new long[setup.ceilingsMilliamps().size()];
        used[setup.stripSupply()] = strip(shown);
        mostMilliamps = Math.max(mostMilliamps, used[setup.stripSupply()] / (1000 * UNITS));
        for (int i = 0; i < shown.duties().size(); i++) {
            Setup.Dimmer dimmer = setup.dimmers().get(i);
            used[dimmer.supply()] += shown.duties().get(i) * 1000L * dimmer.fullMilliamps();
        }
        if (shown.light() == Light.DIMMED) {
            return Optional.of("the controller had to dim a frame: " + shown);
        }
        for (int i = 0; i < used.length; i++) {
            if (used[i] > setup.ceilingsMilliamps().get(i) * 1000 * UNITS) {
                return Optional.of("over the ceiling: " + shown);
            }
        }
        return Optional.empty();
    }

    private long strip(Entry shown) {
        long used = setup.pixels() * (long) setup.darkMicroamps() * UNITS;
        for (int i = 0; i < shown.strip().size(); i++) {
            used += shown.strip().get(i) * (long) setup.channelMicroamps().get(i % setup.channels()) * BYTE_STEP;
        }
        return used;
    }

    /** The most that the strip drew in any frame so far, in whole mA. */
    public long mostMilliamps() {
        return mostMilliamps;
    }
}
