package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.config.Swatches;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.StripGlance;
import dev.lampwright.shelf.RigStatus;
import dev.lampwright.shelf.ShelfRow;

/** A rig of this process on the shelf. For one thread. */
final class LocalRig implements AutoCloseable {
    private final String name;
    private final Daemon daemon;
    private final StripGlance strip;

    /**
     * Creates one that does not read the strip yet.
     *
     * @param name of the rig
     * @param daemon its daemon
     */
    LocalRig(String name, Daemon daemon) {
        this.name = name;
        this.daemon = daemon;
        strip = new StripGlance(daemon::tap);
    }

    /** Whether it belongs to a daemon. */
    boolean isOf(Daemon other) {
        return daemon == other;
    }

    /** Reads the strip, and returns whether it has changed. */
    boolean look() {
        return strip.look();
    }

    /** The colours last read: red, green and blue of each, for a screen. */
    byte[] rgb() {
        return strip.rgb();
    }

    /** Its status now. */
    ShelfRow row() {
        return ShelfRow.here(RigStatus.here(name, daemon.signature(), daemon.report()));
    }

    /** Whether a look flashes. */
    boolean flashes(String look) {
        Config config = daemon.tap().config();
        if (config.light().guard().allowFlashing()) {
            return true;
        }
        return config.looks().containsKey(look)
                ? config.looks().get(look).flashes()
                : Swatches.names().contains(look) && Swatches.flashes(look, config.fitting());
    }

    /** Leaves the strip alone. */
    @Override
    public void close() {
        strip.close();
    }
}
