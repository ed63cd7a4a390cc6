package dev.lampwright.engine;

import dev.lampwright.cue.Wishes;
import dev.lampwright.printer.Statuses;

/** Receives from the frame loop which statuses and wishes its frames show. No method may block. */
public interface StatusWatch {
    /** Nobody watches. */
    StatusWatch NOBODY = new StatusWatch() {
        @Override
        public void start(long firstFrameNanos) {}

        @Override
        public void shown(long tick, Statuses statuses) {}

        @Override
        public void asked(long tick, Wishes wishes) {}

        @Override
        public void leftOut(long tick, long count) {}

        @Override
        public void delivered(Delivery delivery) {}

        @Override
        public void early(Early early) {}
    };

    /**
     * The loop starts.
     *
     * @param firstFrameNanos the time of the first frame
     */
    void start(long firstFrameNanos);

    /**
     * A frame is the first to show these statuses.
     *
     * @param tick the frame, counted from 0
     * @param statuses the newest of each
     */
    void shown(long tick, Statuses statuses);

    /**
     * A frame is the first to follow wishes.
     *
     * @param tick the frame, counted from 0
     * @param wishes what people have asked for
     */
    void asked(long tick, Wishes wishes);

    /**
     * Frames are skipped, because their time has passed.
     *
     * @param tick the first of them
     * @param count how many, 1 or more
     */
    void leftOut(long tick, long count);

    /**
     * Something unusual happened to frames on their way to the light.
     *
     * @param delivery how, and from which frame on that is known
     */
    void delivered(Delivery delivery);

    /**
     * A frame is made before its time on the grid.
     *
     * @param early which, and how much
     */
    void early(Early early);
}
