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
     * Makes one that does not look at the strip yet.
     *
     * @param name of the rig
     * @param daemon what runs for it
     */
    LocalRig(String name, Daemon daemon) {
        this.name = name;
        this.daemon = daemon;
        strip = new StripGlance(daemon::tap);
    }

    /** Whether it is that of a daemon. */
    boolean isOf(Daemon other) {
        return daemon == other;
    }

    /** Looks at the strip, and says whether it shows anything new. */
    boolean look() {
        return strip.look();
    }

    /** The colours of the last look: red, green and blue of each, as a screen shows them. */
    byte[] rgb() {
        return strip.rgb();
    }

    /** Its status now. */
    ShelfRow row() {
        return ShelfRow.here(RigStatus.here(name, daemon.signature(), daemon.report()));
    }

    /** Whether light flashes while a look is on. */
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
