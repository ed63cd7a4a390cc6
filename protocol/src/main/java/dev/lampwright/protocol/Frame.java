package dev.lampwright.protocol;

import java.util.Arrays;

/**
 * One frame as sent: the strip's bytes in its own order, pixel 0 first, and the duty of each dimmer. Created once and refilled; the arrays
 * belong to the frame and may be written.
 */
public final class Frame {
    private final byte[] strip;
    private final int[] duties;

    /**
     * Creates a dark frame.
     *
     * @param stripBytes bytes of the strip, 0 to 65535
     * @param dimmers dimmers in use, 0 to 255
     */
    public Frame(int stripBytes, int dimmers) {
        strip = new byte[stripBytes];
        duties = new int[dimmers];
    }

    /**
     * The strip's bytes.
     *
     * @return the same array each time
     */
    public byte[] strip() {
        return strip;
    }

    /**
     * The dimmers' duties, 0 to 65535 each.
     *
     * @return the same array each time
     */
    public int[] duties() {
        return duties;
    }

    /**
     * Copies another frame's light.
     *
     * @param other a frame of the same size
     */
    public void copyFrom(Frame other) {
        System.arraycopy(other.strip, 0, strip, 0, strip.length);
        System.arraycopy(other.duties, 0, duties, 0, duties.length);
    }

    /**
     * Whether this has the same light as another frame, byte for byte.
     *
     * @param other a frame of any size
     * @return true if it has
     */
    public boolean sameAs(Frame other) {
        return Arrays.equals(strip, other.strip) && Arrays.equals(duties, other.duties);
    }

    /** Makes everything dark. */
    public void darken() {
        Arrays.fill(strip, (byte) 0);
        Arrays.fill(duties, 0);
    }
}
