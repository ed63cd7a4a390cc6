package dev.lampwright.engine;

import dev.lampwright.config.Config;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.protocol.Frame;

/**
 * Where frames can be looked at as they leave: the very bytes of strip and dimmers, guards included. The frame loop copies each into a
 * slot where the newest wins, without a lock and without allocating, and only while somebody looks. One thread may look.
 */
public final class FrameTap {
    private final Config config;
    private final FrameSlot slot;
    private volatile boolean open;

    /**
     * Makes a tap that is shut.
     *
     * @param config what the frames are made by
     */
    FrameTap(Config config) {
        this.config = config;
        slot = new FrameSlot(
                config.setup().stripBytes(), config.setup().dimmers().size());
    }

    /** A frame leaves. For the frame loop only. */
    void leave(Frame frame) {
        if (open) {
            slot.back().copyFrom(frame);
            slot.publish();
        }
    }

    /**
     * What the frames are made by.
     *
     * @return the same each time
     */
    public Config config() {
        return config;
    }

    /**
     * Opens or shuts it. A frame from before it was shut may still be there when it is opened again.
     *
     * @param on whether frames are to be left here from now on
     */
    public void open(boolean on) {
        open = on;
    }

    /** Whether frames are to be left here. */
    boolean isOpen() {
        return open;
    }

    /**
     * Whether a frame is there that has not been taken.
     *
     * @return false after {@link #take}, until the next frame
     */
    public boolean fresh() {
        return slot.fresh();
    }

    /**
     * Takes the newest frame.
     *
     * @return the frame, which stays as it is until the next call; the same as before if none is {@link #fresh}
     */
    public Frame take() {
        return slot.take();
    }
}
