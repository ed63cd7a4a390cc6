package dev.lampwright.demo;

import java.util.concurrent.TimeUnit;

/**
 * One direction of a line: bytes go in at once and arrive one after the other, as fast as the baud rate allows. Allocates nothing, except when
 * more are in transit than ever before.
 */
final class PacedPipe {
    private static final int CAPACITY = 1 << 14;
    /** A short frame. Each place takes nine bytes of memory, so a pipe begins small. */
    private static final int FIRST_PLACES = 1 << 8;

    /** Start bit, eight data bits and stop bit. */
    private static final long BYTE_NANOS_AT_ONE_BAUD = TimeUnit.SECONDS.toNanos(10);

    /** As many as a power of two, like {@link #arrivals}. */
    private byte[] bytes = new byte[FIRST_PLACES];

    private long[] arrivals = new long[FIRST_PLACES];
    private final long byteNanos;
    private int first;
    private int size;
    private long lastArrival;

    PacedPipe(int baud) {
        byteNanos = BYTE_NANOS_AT_ONE_BAUD / baud;
    }

    /** Discards what is in transit. */
    void clear() {
        size = 0;
    }

    /** How many more bytes can be in transit. */
    int room() {
        return CAPACITY - size;
    }

    boolean isEmpty() {
        return size == 0;
    }

    /**
     * Sends bytes, for all of which there must be {@link #room}.
     *
     * @param from index of the first
     * @param nanos when the first may start
     */
    void put(byte[] source, int from, int count, long nanos) {
        while (size + count > bytes.length) {
            grow();
        }
        long free = size > 0 && lastArrival - nanos > 0 ? lastArrival : nanos;
        for (int i = from; i < from + count; i++) {
            int at = place(size++);
            free += byteNanos;
            bytes[at] = source[i];
            arrivals[at] = free;
        }
        lastArrival = free;
    }

    private void grow() {
        byte[] moreBytes = new byte[2 * bytes.length];
        long[] moreArrivals = new long[2 * arrivals.length];
        for (int i = 0; i < size; i++) {
            moreBytes[i] = bytes[place(i)];
            moreArrivals[i] = arrivals[place(i)];
        }
        bytes = moreBytes;
        arrivals = moreArrivals;
        first = 0;
    }

    private int place(int ofFirst) {
        return (first + ofFirst) & (bytes.length - 1);
    }

    /** Whether a byte has arrived by a time. */
    boolean arrived(long nanos) {
        return size > 0 && arrivals[first] - nanos <= 0;
    }

    /** When the next byte arrives; there must be one. */
    long firstArrival() {
        return arrivals[first];
    }

    /** When the last byte in transit arrives; there must be one. */
    long lastArrival() {
        return lastArrival;
    }

    /** Takes the next byte; there must be one. */
    byte take() {
        byte value = bytes[first];
        first = place(1);
        size--;
        return value;
    }
}
