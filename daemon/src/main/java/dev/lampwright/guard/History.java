package dev.lampwright.guard;

import dev.lampwright.protocol.Frame;

/**
 * The light of the last second: every frame that differs from the one before, with its number and its time. A second is
 * counted longer by the time that frames may take to be shown, since light that was sent a second ago may have been seen a little later.
 */
final class History {
    private static final long SECOND = 1_000_000_000L;
    /** How long light may have to wait in the dark: as long as it is dark at three even flashes in a second. */
    private static final long DARK_NANOS = SECOND / 6;
    /** What a controller that starts again may add: it goes dark, and comes back. */
    private static final int RELIT_TRANSITIONS = 2;

    private static final int MOST_TRANSITIONS = 7;
    private static final int MOST_RELIT = 4;
    private static final long LATE_FOR = 2 * SECOND;

    private final Frame[] frames;
    private final long[] times;
    private final long[] relit = new long[MOST_RELIT];
    private int relits;
    private boolean relitSince;
    private long usuallyLate;
    private long late;
    private long lateUntil;
    private long now;
    private long newest = -1;
    private long oldest;
    private long base = -1;
    private long baseAtNextRise = -1;

    /**
     * Makes an empty history.
     *
     * @param stripBytes bytes of the strip in each frame
     * @param dimmers dimmers in each frame
     * @param framesPerSecond the most frames in a second, 1 or more
     * @throws IllegalArgumentException if the rate is below 1
     */
    History(int stripBytes, int dimmers, int framesPerSecond) {
        if (framesPerSecond < 1) {
            throw new IllegalArgumentException(framesPerSecond + " frames a second");
        }
        frames = new Frame[2 * framesPerSecond + 4];
        times = new long[frames.length];
        for (int i = 0; i < frames.length; i++) {
            frames[i] = new Frame(stripBytes, dimmers);
        }
    }

    /**
     * How late light usually is.
     *
     * @param nanos the longest time from a frame's own time until it is seen, 0 or more
     */
    void expectLate(long nanos) {
        usuallyLate = nanos;
        late = Math.max(late, nanos);
    }

    /**
     * How late light has been recently, which counts for two seconds.
     *
     * @param nanos as for {@link #expectLate}
     */
    void wereLate(long nanos) {
        if (nanos >= late && nanos > usuallyLate) {
            late = nanos;
            lateUntil = now + LATE_FOR;
        }
    }

    /** Notes that the controller may have gone dark and come back by itself, up to the time of the next {@link #moveTo}. */
    void relit() {
        relitSince = true;
    }

    /**
     * Leaves out what is no longer within the last second.
     *
     * @param nanos the time of the frame that is about to leave
     */
    void moveTo(long nanos) {
        now = nanos;
        if (relitSince) {
            relitSince = false;
            relit[relits % MOST_RELIT] = now;
            relits++;
        }
        late = now - lateUntil > 0 ? usuallyLate : late;
        base = lastAt(nanos - SECOND - late, Math.max(base, oldest));
        baseAtNextRise = lastAt(nanos + DARK_NANOS - SECOND - late, base);
        oldest = Math.max(oldest, base);
    }

    /** The last frame that was there already at a time, looking from one frame on; that frame less one if none was. */
    private long lastAt(long time, long from) {
        long last = Math.max(from, 0) - 1;
        while (last < newest && times[place(last + 1)] - time <= 0) {
            last++;
        }
        return last;
    }

    /** Whether another frame finds room. */
    boolean hasRoom() {
        return newest - oldest + 1 < frames.length;
    }

    /**
     * Takes in a frame that differs from the last, after {@link #moveTo} its time. There must be room.
     *
     * @param frame what leaves
     */
    void add(Frame frame) {
        newest++;
        frames[place(newest)].copyFrom(frame);
        times[place(newest)] = now;
    }

    /** The frame that was on when the last second began; later ones are in it. −1 if all are. */
    long base() {
        return base;
    }

    /** The {@link #base} of a sixth of a second later. */
    long baseAtNextRise() {
        return baseAtNextRise;
    }

    /** Number of the last frame, −1 before the first. */
    long newest() {
        return newest;
    }

    /** Number of the oldest frame that is still there. */
    long oldest() {
        return oldest;
    }

    /** A frame from {@link #oldest} to {@link #newest}. */
    Frame frame(long number) {
        return frames[place(number)];
    }

    /** How many transitions this second may have: seven are three flashes and a half. */
    int mostTransitions() {
        int most = MOST_TRANSITIONS;
        for (int i = 0; i < Math.min(relits, MOST_RELIT); i++) {
            most -= now - relit[i] <= SECOND + late ? RELIT_TRANSITIONS : 0;
        }
        return most;
    }

    private int place(long number) {
        return (int) (number % frames.length);
    }
}
