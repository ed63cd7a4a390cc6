package dev.lampwright.demo;

import java.util.concurrent.TimeUnit;

/** One direction of a line: bytes go in at once and arrive one after the other, as fast as the baud rate allows. Allocates nothing. */
final class PacedPipe {
    private static final int CAPACITY = 1 << 14;
    private static final int INDEX = CAPACITY - 1;
    /** Start bit, eight data bits and stop bit. */
    private static final long BYTE_NANOS_AT_ONE_BAUD = TimeUnit.SECONDS.toNanos(10);

    private final byte[] bytes = new byte[CAPACITY];
    private final long[] arrivals = new long[CAPACITY];
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
        long free = size > 0 && lastArrival - nanos > 0 ? lastArrival : nanos;
        for (int i = from; i < from + count; i++) {
            int at = (first + size++) & INDEX;
            free += byteNanos;
            bytes[at] = source[i];
            arrivals[at] = free;
        }
        lastArrival = free;
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
        first = (first + 1) & INDEX;
        size--;
        return value;
    }
}
