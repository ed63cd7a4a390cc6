package dev.lampwright.engine;

import dev.lampwright.config.Config;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;

/**
 * Where frames can be looked at as they leave: the very bytes of strip and dimmers, guards included. Each viewer opens a place; the frame
 * loop copies every frame into all open places, where the newest wins, without a lock and without allocating. Viewers do not keep the loop
 * awake: while the light does not change, no frame is made, and they see the one that was left last. Safe for many threads.
 */
public final class FrameTap {
    private final Config config;
    private volatile Place[] places = {};

    /**
     * Makes a tap that nobody looks at.
     *
     * @param config what the frames are made by
     */
    FrameTap(Config config) {
        this.config = config;
    }

    /** A frame leaves. For the frame loop only. */
    void leave(Frame frame) {
        for (Place place : places) {
            place.leave(frame);
        }
    }

    /** Whether a place has had no frame yet, so that one has to be made even if the light does not change. */
    boolean isAwaited() {
        for (Place place : places) {
            if (!place.served) {
                return true;
            }
        }
        return false;
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
     * Opens a place. The current frame is left there soon, and then each one that is made.
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
     * @return 0 while nobody looks
     */
    public int looking() {
        return places.length;
    }

    private synchronized void drop(Place place) {
        places = Arrays.stream(places).filter(one -> one != place).toArray(Place[]::new);
    }

    /** Where one thread looks at frames. */
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

        /** Stops looking. */
        @Override
        public void close() {
            drop(this);
        }
    }
}
