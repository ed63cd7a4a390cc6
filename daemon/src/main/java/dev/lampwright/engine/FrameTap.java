package dev.lampwright.engine;

import dev.lampwright.config.Config;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;

/**
 * Makes outgoing frames readable: the exact bytes for strip and dimmers, after the guards. Each viewer opens a place; the frame loop copies
 * every frame into all open places, where the newest wins, without a lock and without allocating. Viewers do not keep the loop awake: while
 * the light does not change, no frame is made, and they see the last one. Safe for many threads.
 */
public final class FrameTap {
    private final Config config;
    private volatile Place[] places = {};

    /**
     * Creates a tap without viewers.
     *
     * @param config the configuration of the frames
     */
    FrameTap(Config config) {
        this.config = config;
    }

    /** Passes on an outgoing frame. For the frame loop only. */
    void leave(Frame frame) {
        for (Place place : places) {
            place.leave(frame);
        }
    }

    /** Whether a place has had no frame yet, so that one must be made even if the light does not change. */
    boolean isAwaited() {
        for (Place place : places) {
            if (!place.served) {
                return true;
            }
        }
        return false;
    }

    /**
     * The configuration of the frames.
     *
     * @return the same each time
     */
    public Config config() {
        return config;
    }

    /**
     * Opens a place. The current frame is put there soon, followed by each new one.
     *
     * @return a new place, which the caller closes
     */
    public synchronized Place open() {
        Place place = new Place();
        Place[] more = Arrays.copyOf(places, places.length + 1);
        more[places.length] = place;
        places = more;
        return place;
    }

    /**
     * How many places are open.
     *
     * @return 0 without viewers
     */
    public int looking() {
        return places.length;
    }

    private synchronized void drop(Place place) {
        places = Arrays.stream(places).filter(one -> one != place).toArray(Place[]::new);
    }

    /** A place for one thread that reads frames. */
    public final class Place implements AutoCloseable {
        private final FrameSlot slot = new FrameSlot(
                config.setup().stripBytes(), config.setup().dimmers().size());
        private volatile boolean served;

        private Place() {}

        private void leave(Frame frame) {
            slot.back().copyFrom(frame);
            slot.publish();
            served = true;
        }

        /**
         * Whether there is a frame that has not been taken.
         *
         * @return false after {@link #take}, until the next frame
         */
        public boolean fresh() {
            return slot.fresh();
        }

        /**
         * Takes the newest frame.
         *
         * @return the frame, which is valid until the next call; the same as before if none is {@link #fresh}
         */
        public Frame take() {
            return slot.take();
        }

        /** Stops looking. */
        @Override
        public void close() {
            drop(this);
        }
    }
}
