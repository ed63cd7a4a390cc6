package dev.lampwright.colour;

/**
 * Calculates the duties of one pixel: calibration, then what white LEDs take over. A colour that the strip cannot show keeps its luminance
 * and moves straight towards grey until it can be shown; one that is too strong keeps its chromaticity and gets darker.
 */
final class PixelDuties {
    /** Places of the duties. */
    static final int RED = 0;

    static final int GREEN = 1;
    static final int BLUE = 2;
    static final int WHITE = 3;

    private static final int COLOURS = 3;

    /** The rows of the calibration's matrix. */
    private final Row redRow;

    private final Row greenRow;
    private final Row blueRow;
    private final float[] neutral = new float[COLOURS];
    private final float[] luminances;
    private final float[] perWhite;
    private final float[] whites;
    private final boolean hasWhite;

    /**
     * Creates one.
     *
     * @param calibration what is known about the strip
     * @param hasWhite whether the strip has white LEDs
     */
    PixelDuties(Calibration calibration, boolean hasWhite) {
        redRow = Row.of(calibration.dutiesOfLight(), RED);
        greenRow = Row.of(calibration.dutiesOfLight(), GREEN);
        blueRow = Row.of(calibration.dutiesOfLight(), BLUE);
        neutral[RED] = redRow.duty(1, 1, 1);
        neutral[GREEN] = greenRow.duty(1, 1, 1);
        neutral[BLUE] = blueRow.duty(1, 1, 1);
        luminances = floats(calibration.luminances());
        whites = floats(calibration.white());
        perWhite = floats(calibration.white().each(duty -> 1 / duty));
        this.hasWhite = hasWhite;
    }

    /** Whether each duty equals the light of its channel, and no channel is white. */
    boolean isPlain() {
        return !hasWhite
                && redRow.equals(new Row(1, 0, 0))
                && greenRow.equals(new Row(0, 1, 0))
                && blueRow.equals(new Row(0, 0, 1));
    }

    /**
     * Calculates one pixel.
     *
     * @param rgba linear light
     * @param at index of the pixel's red; values outside 0 to 1 are clipped, NaN is dark
     * @param duties where to write the duties of red, green, blue and white, 0 to 1 except for rounding
     */
    void pixel(float[] rgba, int at, float[] duties) {
        float r = cut(rgba[at]);
        float g = cut(rgba[at + 1]);
        float b = cut(rgba[at + 2]);
        float red = redRow.duty(r, g, b);
        float green = greenRow.duty(r, g, b);
        float blue = blueRow.duty(r, g, b);
        duties[RED] = red;
        duties[GREEN] = green;
        duties[BLUE] = blue;
        if (red < 0 || green < 0 || blue < 0) {
            towardsGrey(duties);
        }
        if (duties[RED] > 1 || duties[GREEN] > 1 || duties[BLUE] > 1) {
            scale(duties, 1 / Math.max(duties[RED], Math.max(duties[GREEN], duties[BLUE])));
        }
        if (hasWhite) {
            duties[WHITE] = takeWhite(duties);
        }
    }

    /** Separate numbers rather than an array, so that the compiler can keep them in registers from pixel to pixel. */
    private record Row(float ofRed, float ofGreen, float ofBlue) {
        static Row of(Matrix matrix, int row) {
            return new Row((float) matrix.cell(row, 0), (float) matrix.cell(row, 1), (float) matrix.cell(row, 2));
        }

        float duty(float red, float green, float blue) {
            return ofRed * red + ofGreen * green + ofBlue * blue;
        }
    }

    private void towardsGrey(float[] duties) {
        float luminance = luminances[0] * duties[RED] + luminances[1] * duties[GREEN] + luminances[2] * duties[BLUE];
        float share = 0;
        for (int i = 0; i < COLOURS; i++) {
            float below = Math.min(0, duties[i]);
            share = Math.max(share, below / (below - luminance * neutral[i]));
        }
        for (int i = 0; i < COLOURS; i++) {
            duties[i] += (luminance * neutral[i] - duties[i]) * share;
        }
    }

    private float takeWhite(float[] duties) {
        float white = Math.min(
                duties[RED] * perWhite[RED], Math.min(duties[GREEN] * perWhite[GREEN], duties[BLUE] * perWhite[BLUE]));
        white = cut(white);
        for (int i = 0; i < COLOURS; i++) {
            duties[i] -= white * whites[i];
        }
        return white;
    }

    private static void scale(float[] duties, float factor) {
        for (int i = 0; i < COLOURS; i++) {
            duties[i] *= factor;
        }
    }

    private static float cut(float value) {
        return value > 0 ? (value < 1 ? value : 1) : 0;
    }

    private static float[] floats(Triple numbers) {
        return new float[] {(float) numbers.first(), (float) numbers.second(), (float) numbers.third()};
    }
}
