package dev.lampwright.tool.picture;

import dev.lampwright.colour.Srgb;

/** Colours of a picture, as {@code 0xRRGGBB} in sRGB. */
final class PictureColours {
    /** Where nothing is drawn. */
    static final int GROUND = 0x1b1e24;
    /** A light that is off. */
    static final int OFF = 0x000000;
    /** The dark background of lights. */
    static final int NIGHT = 0x0c0e12;
    /** A round light that is off. */
    static final int BODY = 0x23272e;
    /** Primary text. */
    static final int WORDS = 0xe8e6e3;
    /** Secondary text. */
    static final int FAINT = 0x9aa0a8;
    /** Lines. */
    static final int LINES = 0x5a606a;

    private PictureColours() {}

    /** A colour, from linear light, 0 to 1 each. */
    static int of(double red, double green, double blue) {
        return level(red) << 16 | level(green) << 8 | level(blue);
    }

    /** A colour lit by a share of the light of another: 0 leaves it unchanged. */
    static int lit(int below, int light, double share) {
        return of(
                added(below >> 16, light >> 16, share),
                added(below >> 8, light >> 8, share),
                added(below, light, share));
    }

    /** A colour between two, mixed in encoded form. */
    static int between(int from, int to, double share) {
        return step(from >> 16, to >> 16, share) << 16 | step(from >> 8, to >> 8, share) << 8 | step(from, to, share);
    }

    private static int step(int from, int to, double share) {
        int low = from & 0xFF;
        return (int) Math.round(low + share * ((to & 0xFF) - low));
    }

    private static double added(int below, int light, double share) {
        return Math.min(1, linear(below) + share * linear(light));
    }

    private static double linear(int level) {
        return Srgb.decode((level & 0xFF) / 255.0);
    }

    private static int level(double light) {
        return (int) Math.round(255 * Srgb.encode(light));
    }
}
