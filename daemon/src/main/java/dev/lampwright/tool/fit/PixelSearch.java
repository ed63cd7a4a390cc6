package dev.lampwright.tool.fit;

/**
 * Counts pixels by asking whether a pixel exists: first further and further out, then by bisection between the last that was seen and the
 * first that was not.
 */
final class PixelSearch {
    private static final int FIRST = 7;

    private final int most;
    private int seen = -1;
    private int notSeen;

    /**
     * Starts counting.
     *
     * @param most how many can be driven, 1 or more
     */
    PixelSearch(int most) {
        this.most = most;
        notSeen = most;
    }

    /** Whether there is nothing left to ask. */
    boolean done() {
        return notSeen - seen == 1;
    }

    /** The pixel to ask about next; for a search that is not {@link #done}. */
    int next() {
        if (notSeen < most) {
            return (seen + notSeen) / 2;
        }
        int further = Math.max(FIRST, 2 * seen + 1);
        return Math.min(further, most - 1);
    }

    /** Takes an answer. */
    void answered(int pixel, boolean there) {
        if (there) {
            seen = Math.max(seen, pixel);
        } else {
            notSeen = Math.min(notSeen, pixel);
        }
    }

    /** Takes a number that somebody knows; it still has to be verified. */
    void assume(int pixels) {
        seen = pixels - 1;
        notSeen = pixels;
    }

    /** Whether there has been an answer yet. */
    boolean begun() {
        return seen >= 0 || notSeen < most;
    }

    /** How many were seen for certain. */
    int least() {
        return seen + 1;
    }

    /** How many there can be at most. */
    int mostLeft() {
        return notSeen;
    }

    /** How far the search has got, in words. */
    String soFar() {
        if (!begun()) {
            return "up to " + most + " can be driven";
        }
        return notSeen < most
                ? "so far: " + (seen + 1) + " to " + notSeen + " pixels"
                : "so far: " + (seen + 1) + " or more";
    }

    /** How many there are, once it is {@link #done}: 0 if none was seen. */
    int pixels() {
        return seen + 1;
    }

    /** Whether as many were seen as can be driven. */
    boolean full() {
        return seen == most - 1;
    }

    /** There are more, beyond the last that was seen: pixels reported missing may exist after all. */
    void goOn() {
        notSeen = most;
    }

    /** The last pixel reported is not there: other pixels reported may be missing as well. */
    void startOver() {
        notSeen = seen;
        seen = -1;
    }
}
