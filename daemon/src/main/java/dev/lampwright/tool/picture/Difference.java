package dev.lampwright.tool.picture;

import java.awt.image.BufferedImage;

/** Where two pictures differ. */
final class Difference {
    private Difference() {}

    /**
     * The smallest rectangle that has all differences in it.
     *
     * @return x, y, width and height; nothing at all if the pictures are the same
     */
    static int[] box(BufferedImage one, BufferedImage other) {
        int left = one.getWidth();
        int top = one.getHeight();
        int right = -1;
        int bottom = -1;
        for (int y = 0; y < one.getHeight(); y++) {
            for (int x = 0; x < one.getWidth(); x++) {
                if (one.getRGB(x, y) != other.getRGB(x, y)) {
                    left = Math.min(left, x);
                    right = Math.max(right, x);
                    top = Math.min(top, y);
                    bottom = y;
                }
            }
        }
        return right < 0 ? new int[0] : new int[] {left, top, right - left + 1, bottom - top + 1};
    }
}
