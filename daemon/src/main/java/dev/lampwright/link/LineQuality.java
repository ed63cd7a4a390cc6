package dev.lampwright.link;

import dev.lampwright.upkeep.Trouble;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;

/** Watches how well an open line carries messages, and logs problems. Allocates nothing while everything works. */
final class LineQuality {
    private static final long CLEAN_FOR = TimeUnit.SECONDS.toNanos(10);

    private final String port;
    private final Tally tally;
    private final LongSupplier clock;
    private final Trouble garble;
    private final Trouble ceiling;
    private boolean counting;
    private long mishaps;
    private long dimmed;
    private long lastMishap;
    private long lastDimmed;

    LineQuality(Logger log, String port, Tally tally, LongSupplier clock) {
        this.port = port;
        this.tally = tally;
        this.clock = clock;
        garble = new Trouble(log);
        ceiling = new Trouble(log);
    }

    /**
     * Forgets the counts: the next check starts from the current ones. A controller may have counted before, and what was on the line
     * during its start does not matter.
     */
    void restart() {
        counting = false;
    }

    /**
     * Checks the counts, which the controller must have reported since {@link #restart}.
     *
     * @param darkOverCeiling whether the controller has reported that the dark strip alone is over the ceiling
     */
    void watch(boolean darkOverCeiling) {
        if (!counting) {
            counting = true;
            mishaps = tally.mishaps();
        }
        long now = clock.getAsLong();
        watchGarble(now);
        watchCeiling(now, darkOverCeiling);
    }

    /** What is wrong; empty if nothing is. */
    String words() {
        return garble.isOn() ? garble.words() : ceiling.words();
    }

    private void watchGarble(long now) {
        long newMishaps = tally.mishaps();
        if (newMishaps != mishaps) {
            mishaps = newMishaps;
            lastMishap = now;
            garble.begins(
                    "messages on " + port
                            + " are getting lost or corrupted: check the cable, the ground wire, and that baud is the same on both sides",
                    now);
        } else if (garble.isOn() && now - lastMishap > CLEAN_FOR) {
            garble.ends("messages on " + port + " are getting through again; so far " + tally.messagesLost
                    + " were lost, "
                    + tally.garbled + " arrived corrupted, and the controller counts " + tally.broken() + " broken and "
                    + tally.overruns() + " overrun");
        }
    }

    private void watchCeiling(long now, boolean darkOverCeiling) {
        long newDimmed = tally.framesDimmed.get();
        if (newDimmed != dimmed || darkOverCeiling) {
            dimmed = newDimmed;
            lastDimmed = now;
            ceiling.begins(
                    darkOverCeiling
                            ? "the dark strip alone is over ceiling_mA, so every frame is shown dark: raise [supply] ceiling_mA"
                            : "the controller on " + port
                                    + " dims frames to keep the ceiling, which lampwright should have done",
                    now);
        } else if (ceiling.isOn() && now - lastDimmed > CLEAN_FOR) {
            ceiling.ends("the controller on " + port + " shows frames undimmed again");
        }
    }
}
