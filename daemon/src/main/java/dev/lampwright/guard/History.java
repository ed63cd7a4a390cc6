package dev.lampwright.guard;

import dev.lampwright.protocol.Frame;

/**
 * The light of the last second: every frame that differs from the previous one, with its number and its time. A second is extended by the
 * time that frames may take to be shown, since light that was sent a second ago may have been seen a little later.
 */
final class History {
    private static final long SECOND = 1_000_000_000L;
    /** How long light may have to stay dark: as long as the dark phase of three even flashes in a second. */
    private static final long DARK_NANOS = SECOND / 6;
    /** The transitions that a restarting controller may add: it goes dark, and comes back. */
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
     * Creates an empty history.
     *
     * @param stripBytes bytes of the strip in each frame
     * @param dimmers dimmers in each frame
     * @param framesPerSecond the maximum frames per second, 1 or more
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
     * Sets how late light usually is.
     *
     * @param nanos the longest time from a frame's own time until it is seen, 0 or more
     */
    void expectLate(long nanos) {
        usuallyLate = nanos;
        late = Math.max(late, nanos);
    }

    /**
     * Sets how late light has been recently, which applies for two seconds.
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
     * Drops what is no longer within the last second.
     *
     * @param nanos the time of the frame about to be sent
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

    /** The last frame that already existed at a time, searching from a given frame on; that frame minus one if none did. */
    private long lastAt(long time, long from) {
        long last = Math.max(from, 0) - 1;
        while (last < newest && times[place(last + 1)] - time <= 0) {
            last++;
        }
        return last;
    }

    /** Whether there is room for another frame. */
    boolean hasRoom() {
        return newest - oldest + 1 < frames.length;
    }

    /**
     * Adds a frame that differs from the last, after {@link #moveTo} its time. There must be room.
     *
     * @param frame the frame that is sent
     */
    void add(Frame frame) {
        newest++;
        frames[place(newest)].copyFrom(frame);
        times[place(newest)] = now;
    }

    /** The frame that was showing when the last second began; later ones are within it. −1 if all are. */
    long base() {
        return base;
    }

    /** The {@link #base} a sixth of a second later. */
    long baseAtNextRise() {
        return baseAtNextRise;
    }

    /** Number of the last frame, −1 before the first. */
    long newest() {
        return newest;
    }

    /** Number of the oldest frame that is still kept. */
    long oldest() {
        return oldest;
    }

    /** A frame from {@link #oldest} to {@link #newest}. */
    Frame frame(long number) {
        return frames[place(number)];
    }

    /** How many transitions this second may have: seven are three and a half flashes. */
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
