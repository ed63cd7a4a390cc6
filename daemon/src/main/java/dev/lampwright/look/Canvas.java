package dev.lampwright.look;

import java.util.Arrays;

/**
 * The light of one frame before it becomes bytes: the whole strip, pixel 0 first, and the dimmers. Also holds the working memory that
 * layers need while drawing.
 */
public final class Canvas {
    private static final float ROUNDING = 0.0001f;
    private static final int MOST_BITS = Float.floatToRawIntBits(1 + ROUNDING);

    private final float[] rgba;
    private final float[] dimmers;
    private final float[] paint;
    private final Cover cover;

    /**
     * Creates a dark canvas.
     *
     * @param pixels pixels of the strip, and one more for each plain colour strip
     * @param dimmers dimmers in use
     */
    public Canvas(int pixels, int dimmers) {
        rgba = new float[4 * pixels];
        this.dimmers = new float[dimmers];
        paint = new float[4 * pixels];
        cover = new Cover(pixels);
    }

    /**
     * The strip's light.
     *
     * @return premultiplied linear light, four floats a pixel; the same array each time
     */
    public float[] rgba() {
        return rgba;
    }

    /**
     * The dimmers' light.
     *
     * @return 0 to 1 for each; the same array each time
     */
    public float[] dimmers() {
        return dimmers;
    }

    /** Working memory for the paint of the layer being drawn: four floats for each place of its zone. */
    float[] paint() {
        return paint;
    }

    /** Working memory for the cover of the layer being drawn. */
    Cover cover() {
        return cover;
    }

    /** Makes everything dark. */
    public void clear() {
        Arrays.fill(rgba, 0);
        Arrays.fill(dimmers, 0);
    }

    /**
     * Whether another canvas has as many pixels and dimmers.
     *
     * @param other the other
     * @return true if light can be copied from one to the other
     */
    public boolean sameSizeAs(Canvas other) {
        return rgba.length == other.rgba.length && dimmers.length == other.dimmers.length;
    }

    /**
     * Copies another canvas's light.
     *
     * @param other a canvas of the same size
     */
    public void copyFrom(Canvas other) {
        System.arraycopy(other.rgba, 0, rgba, 0, rgba.length);
        System.arraycopy(other.dimmers, 0, dimmers, 0, dimmers.length);
    }

    /**
     * Mixes another canvas in, in linear light.
     *
     * @param other a canvas of the same size
     * @param share how much of the other, 0 to 1
     */
    public void mix(Canvas other, float share) {
        mix(rgba, other.rgba, share);
        mix(dimmers, other.dimmers, share);
    }

    /**
     * Dims all light.
     *
     * @param share what is left of it, 0 to 1
     */
    public void dim(float share) {
        dim(rgba, share);
        dim(dimmers, share);
    }

    private static void dim(float[] light, float share) {
        for (int i = 0; i < light.length; i++) {
            light[i] *= share;
        }
    }

    /**
     * Whether all light is a number from 0 to 1.
     *
     * @return false if a layer has drawn something that is not light
     */
    public boolean isSound() {
        return isSound(rgba) && isSound(dimmers);
    }

    private static void mix(float[] here, float[] there, float share) {
        for (int i = 0; i < here.length; i++) {
            here[i] += (there[i] - here[i]) * share;
        }
    }

    /** Compares bits first: those of numbers from 0 on sort like the numbers, and those of NaN are higher. */
    private static boolean isSound(float[] light) {
        int wrong = 0;
        for (float value : light) {
            int bits = Float.floatToRawIntBits(value);
            wrong |= bits | (MOST_BITS - bits);
        }
        return wrong >= 0 || isEachSound(light);
    }

    private static boolean isEachSound(float[] light) {
        for (float value : light) {
            if (!isSound(value)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a value is light: a number from 0 to 1, with some tolerance for rounding. */
    static boolean isSound(float light) {
        return light >= -ROUNDING && light <= 1 + ROUNDING;
    }
}
