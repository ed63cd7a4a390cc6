package dev.lampwright.tool.picture;

import java.util.ArrayList;
import java.util.List;

/** The round light of one pixel of a strip, and the wash that it casts on the wall behind, in its own column. */
final class Glow {
    private static final double CORE = 0.36;
    private static final double EDGE = 0.44;
    private static final double EDGE_SHARE = 0.4;
    private static final double WASH_SHARE = 0.35;
    private static final int WASH_LEVELS = 6;
    private static final int WASH_CELLS = 3;

    private final int width;
    private final int height;
    private final int[] kinds;
    private final List<Kind> all = new ArrayList<>();

    /**
     * The composition of a point of the picture.
     *
     * @param below its colour without light, as {@code 0xRRGGBB}
     * @param share how much of the light falls on it
     */
    private record Kind(int below, double share) {}

    private Glow(int width, int height) {
        this.width = width;
        this.height = height;
        kinds = new int[width * height];
        for (int i = 0; i < kinds.length; i++) {
            int column = i % width;
            int row = i / width;
            Kind kind = kind((column + 0.5) / width - 0.5, (row + 0.5 - height / 2.0) / width);
            if (!all.contains(kind)) {
                all.add(kind);
            }
            kinds[i] = all.indexOf(kind);
        }
    }

    /** The kind at a distance from the middle, in widths. */
    private Kind kind(double x, double y) {
        double radius = Math.hypot(x, y);
        if (radius < EDGE) {
            return new Kind(PictureColours.BODY, radius < CORE ? 1 : EDGE_SHARE);
        }
        return new Kind(PictureColours.NIGHT, wash(Math.abs(y) * width / (height / 2.0)));
    }

    /**
     * A light with a wash above and below.
     *
     * @param cell width of its column, in px
     * @return the light
     */
    static Glow washing(int cell) {
        return new Glow(cell, WASH_CELLS * cell);
    }

    /**
     * A light without a wash.
     *
     * @param cell side of its square, in px
     * @return the light
     */
    static Glow alone(int cell) {
        return new Glow(cell, cell);
    }

    /** The height of its column, in px. */
    int height() {
        return height;
    }

    /** Few levels, since a frame of a moving picture has few colours. */
    private static double wash(double distance) {
        double near = Math.ceil((1 - distance) * WASH_LEVELS) / WASH_LEVELS;
        return WASH_SHARE * near * near * near;
    }

    /** Draws the light, with the upper left corner of its column at a point. */
    void draw(Paper paper, int x, int y, int light) {
        int[] tones = all.stream()
                .mapToInt(kind -> PictureColours.lit(kind.below, light, kind.share))
                .toArray();
        for (int i = 0; i < kinds.length; i++) {
            paper.dot(x + i % width, y + i / width, tones[kinds[i]]);
        }
    }
}
