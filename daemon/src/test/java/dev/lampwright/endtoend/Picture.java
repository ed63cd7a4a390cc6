package dev.lampwright.endtoend;

import java.util.ArrayList;
import java.util.List;

/**
 * What a strip of thirty pixels in the order GRB should show, calculated independently: a colour's light by the transfer function of sRGB
 * (IEC 61966-2-1:1999, 5.2), a bar's last pixel by the share of it that is covered, and a byte as the nearest of 255 steps of light.
 * Immutable.
 */
final class Picture {
    /** Pixels of the strip. */
    static final int PIXELS = 30;

    private static final int FULL = 255;
    /** The positions of red, green and blue in the three bytes of a pixel. */
    private static final int[] PLACES = {1, 0, 2};

    private final double[] light;

    private Picture(double[] light) {
        this.light = light;
    }

    /** Nothing is lit. */
    static Picture dark() {
        return new Picture(new double[3 * PIXELS]);
    }

    /**
     * Every pixel has the same colour.
     *
     * @param colour sRGB, as 0xRRGGBB
     */
    static Picture all(int colour) {
        return dark().bar(0, PIXELS - 1, 1, colour);
    }

    /**
     * This with a bar on it.
     *
     * @param first pixel where the bar's zone begins
     * @param last pixel where it ends; lower than the first if it runs backwards
     * @param share how much of the zone the bar covers, 0 to 1
     * @param colour sRGB, as 0xRRGGBB
     */
    Picture bar(int first, int last, double share, int colour) {
        double[] drawn = light.clone();
        int pixels = Math.abs(last - first) + 1;
        for (int i = 0; i < pixels; i++) {
            int pixel = first <= last ? first + i : first - i;
            double covered = Math.max(0, Math.min(1, share * pixels - i));
            for (int channel = 0; channel < 3; channel++) {
                drawn[3 * pixel + PLACES[channel]] = covered * decode(colour >> (16 - 8 * channel) & FULL);
            }
        }
        return new Picture(drawn);
    }

    private static double decode(int value) {
        double encoded = value / (double) FULL;
        return encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
    }

    /** The strip's bytes. */
    List<Integer> bytes() {
        List<Integer> bytes = new ArrayList<>();
        for (double share : light) {
            bytes.add((int) Math.round(share * FULL));
        }
        return bytes;
    }

    /** Whether a strip shows this; half a step of light either way is rounding, which single precision may increase to one. */
    boolean isOn(List<Integer> strip) {
        List<Integer> bytes = bytes();
        boolean same = strip.size() == bytes.size();
        for (int i = 0; same && i < bytes.size(); i++) {
            same = Math.abs(strip.get(i) - bytes.get(i)) <= 1;
        }
        return same;
    }

    @Override
    public String toString() {
        return bytes().toString();
    }
}
