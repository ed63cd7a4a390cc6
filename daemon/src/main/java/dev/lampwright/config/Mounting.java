package dev.lampwright.config;

import java.util.List;

/**
 * How the strip is mounted, as somebody sees it who stands before the printer.
 *
 * @param shape what it looks like
 * @param sides pixels of each side of a frame, from the side of pixel 0 on; empty for other shapes
 * @param begins where pixel 0 of a frame is
 * @param clockwise whether the strip runs so from there
 */
public record Mounting(Shape shape, List<Integer> sides, Corner begins, boolean clockwise) {
    /** A straight strip. */
    public static final Mounting STRAIGHT = new Mounting(Shape.STRAIGHT, List.of(), Corner.BOTTOM_LEFT, true);

    /** Keeps a copy of the list. */
    public Mounting {
        sides = List.copyOf(sides);
    }

    /** What a strip looks like. */
    public enum Shape {
        /** A line, with pixel 0 at the left. */
        STRAIGHT,
        /** One to four sides of a rectangle. */
        FRAME,
        /** A circle, with pixel 0 at the bottom. */
        RING
    }

    /** A corner of a frame. */
    public enum Corner {
        /** Below, on the left. */
        BOTTOM_LEFT,
        /** Above, on the left. */
        TOP_LEFT,
        /** Above, on the right. */
        TOP_RIGHT,
        /** Below, on the right. */
        BOTTOM_RIGHT
    }
}
