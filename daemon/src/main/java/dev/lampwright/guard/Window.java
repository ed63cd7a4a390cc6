package dev.lampwright.guard;

/** Where the frames of the last second stand in a ring of samples. Both ends count: a frame just one second old is within. */
final class Window {
    private static final long LENGTH_NANOS = 1_000_000_000L;
    /** How long light may have to wait in the dark: as long as it is dark at three even flashes in a second. */
    private static final long DARK_NANOS = LENGTH_NANOS / 6;

    private final long[] times;
    private int first;
    private int size;
    private int firstAtNextRise;

    /**
     * Makes an empty window.
     *
     * @param framesPerSecond the most frames in a second, 1 or more
     * @throws IllegalArgumentException if the rate is out of its range
     */
    Window(int framesPerSecond) {
        if (framesPerSecond < 1) {
            throw new IllegalArgumentException(framesPerSecond + " frames a second");
        }
        times = new long[framesPerSecond + 1];
    }

    /** Samples that a ring needs. */
    int capacity() {
        return times.length;
    }

    /**
     * Leaves out what is more than a second old.
     *
     * @param nanos the time of the frame that is about to leave
     */
    void moveTo(long nanos) {
        while (size > 0 && (nanos - times[first] > LENGTH_NANOS || size == times.length)) {
            first = (first + 1) % times.length;
            size--;
        }
        firstAtNextRise = 0;
        while (firstAtNextRise < size && nanos + DARK_NANOS - times[place(firstAtNextRise)] > LENGTH_NANOS) {
            firstAtNextRise++;
        }
    }

    /**
     * Takes a frame in, after {@link #moveTo} its time.
     *
     * @param nanos its time
     */
    void add(long nanos) {
        times[next()] = nanos;
        size++;
    }

    /** How many frames are within. */
    int size() {
        return size;
    }

    /** The oldest of the frames that will still be within a sixth of a second after that of {@link #moveTo}. */
    int firstAtNextRise() {
        return firstAtNextRise;
    }

    /**
     * Where a frame's sample stands.
     *
     * @param index 0 for the oldest
     * @return place in the ring
     */
    int place(int index) {
        return (first + index) % times.length;
    }

    /** Where the sample of the next frame goes. */
    int next() {
        return place(size);
    }
}
