package dev.lampwright.engine;

import dev.lampwright.cue.Wishes;
import dev.lampwright.printer.Statuses;

/** Is told by the frame loop which statuses and wishes its frames show. No method may wait. */
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
     * A frame is the first to show what is known of the printers.
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
     * Frames are not made, because their time is past.
     *
     * @param tick the first of them
     * @param count how many, 1 or more
     */
    void leftOut(long tick, long count);

    /**
     * Something out of the ordinary happened to frames on their way to the light.
     *
     * @param delivery how, and from which frame on that is known
     */
    void delivered(Delivery delivery);

    /**
     * A frame is made before its place on the grid.
     *
     * @param early which, and how much
     */
    void early(Early early);
}
