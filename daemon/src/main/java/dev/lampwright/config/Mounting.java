package dev.lampwright.config;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How the strip is mounted, as seen from in front of the printer.
 *
 * @param shape what it looks like
 * @param sides pixels of each side of a frame, from the side of pixel 0 on; empty for other shapes
 * @param begins where pixel 0 of a frame is
 * @param clockwise whether the strip runs clockwise from there
 * @param seenAs what is seen of its pixels
 * @param lamps where the plain lights are, by name; only those that exist
 */
public record Mounting(
        Shape shape, List<Integer> sides, Corner begins, boolean clockwise, SeenAs seenAs, Map<String, Side> lamps) {
    /** Keeps copies of the collections, in their order. */
    public Mounting {
        sides = List.copyOf(sides);
        lamps = Collections.unmodifiableMap(new LinkedHashMap<>(lamps));
    }

    /** What is seen of the strip's pixels. */
    public enum SeenAs {
        /** Each separately. */
        DOTS,
        /** None: they are behind a diffuser. */
        LINE
    }

    /** Where a plain light is. */
    public enum Side {
        /** Over the printer. */
        ABOVE,
        /** Below it. */
        BELOW,
        /** On its left. */
        LEFT,
        /** On its right. */
        RIGHT,
        /** At its back. */
        BEHIND
    }

    /** What a strip looks like. */
    public enum Shape {
        /** A line, with pixel 0 on the left. */
        STRAIGHT,
        /** One to four sides of a rectangle. */
        FRAME,
        /** A circle, with pixel 0 at the bottom. */
        RING
    }

    /** A corner of a frame. */
    public enum Corner {
        /** Bottom left. */
        BOTTOM_LEFT,
        /** Top left. */
        TOP_LEFT,
        /** Top right. */
        TOP_RIGHT,
        /** Bottom right. */
        BOTTOM_RIGHT
    }
}
