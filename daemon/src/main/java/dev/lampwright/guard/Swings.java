package dev.lampwright.guard;

/**
 * Counts the transitions in a sequence of numbers: the greatest number of opposing changes, each of at least one step, up and down in turn.
 * A change counts only if a marked number is on the way to its start or to its end. Source: WCAG 2.2, "general flash and red flash
 * thresholds", note on transitions: changes between adjacent peaks and valleys.
 */
final class Swings {
    private final long step;
    private boolean empty = true;
    private int direction;
    private long low;
    private long high;
    private boolean marked;
    private boolean markedBefore;
    private boolean counted;
    private int count;

    /**
     * Creates a counter that has seen nothing.
     *
     * @param step the smallest change that counts, 1 or more
     * @throws IllegalArgumentException if it is less
     */
    Swings(long step) {
        if (step < 1) {
            throw new IllegalArgumentException("a step of " + step);
        }
        this.step = step;
    }

    /** Forgets everything. */
    void restart() {
        empty = true;
        direction = 0;
        marked = false;
        markedBefore = false;
        counted = false;
        count = 0;
    }

    /**
     * Adds the next number.
     *
     * @param value the number
     * @param mark whether it is marked
     */
    void add(long value, boolean mark) {
        if (empty) {
            empty = false;
            low = value;
            high = value;
        }
        if (falls(value)) {
            turn(-1, value);
        } else if (rises(value)) {
            turn(1, value);
        }
        low = Math.min(low, value);
        high = Math.max(high, value);
        marked |= mark;
        if (direction != 0 && !counted && (marked || markedBefore)) {
            counted = true;
            count++;
        }
    }

    /** How many transitions there have been. */
    int count() {
        return count;
    }

    /** Whether the last transition went down. */
    boolean isDown() {
        return direction < 0;
    }

    private boolean falls(long value) {
        return direction >= 0 && high - value >= step;
    }

    private boolean rises(long value) {
        return direction <= 0 && value - low >= step;
    }

    private void turn(int newDirection, long value) {
        direction = newDirection;
        low = value;
        high = value;
        markedBefore = marked;
        marked = false;
        counted = false;
    }
}
