package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.config.Swatches;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.StripGlance;
import dev.lampwright.shelf.RigStatus;
import dev.lampwright.shelf.ShelfRow;

/** A rig of this process on the shelf. For one thread. */
final class LocalRig implements AutoCloseable {
    /**
     * As many as can be told apart on a card of the shelf. All strips of 64 rigs then fit into one write of the JDK's HTTP server, which holds
     * 8192 bytes (its source, Java 17).
     */
    private static final int COLOURS = 24;

    private final int id;
    private final String name;
    private final Daemon daemon;
    private final StripGlance strip;

    /**
     * Creates one that does not read the strip yet.
     *
     * @param id its number on the shelf
     * @param name of the rig
     * @param daemon its daemon
     */
    LocalRig(int id, String name, Daemon daemon) {
        this.id = id;
        this.name = name;
        this.daemon = daemon;
        strip = new StripGlance(daemon::tap, COLOURS);
    }

    /** Its number on the shelf. */
    int id() {
        return id;
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
        return ShelfRow.here(RigStatus.here(name, daemon.signature(), daemon.outline()));
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
