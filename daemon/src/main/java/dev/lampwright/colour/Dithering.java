package dev.lampwright.colour;

/**
 * Takes the level above or below so that the mean over time is exact: what rounding leaves over is carried to the next frame, channel
 * by channel (first-order error feedback). A channel is never a whole level off, one that is dark or exactly on a level stays as it
 * is, and after n frames the mean is off by less than 1/n level. In fixed point, so that the same frames give the same bytes on any
 * machine.
 */
final class Dithering implements Rounding {
    private static final int FRACTION_BITS = 16;
    private static final int FRACTION = (1 << FRACTION_BITS) - 1;

    /** The fraction of the golden ratio: channels that would blink together start far apart. Common practice, no source. */
    private static final int SPREAD = 0x9E37;

    private final int[] carried;

    /**
     * Makes a rounding.
     *
     * @param channels bytes of the strip
     */
    Dithering(int channels) {
        carried = new int[channels];
        for (int i = 0; i < channels; i++) {
            carried[i] = (i * SPREAD) & FRACTION;
        }
    }

    @Override
    public byte level(float duty, int channel) {
        int exact = duty > 0 ? Math.round(Math.min(1, duty) * (FULL << FRACTION_BITS)) : 0;
        int sum = exact + carried[channel];
        carried[channel] = sum & FRACTION;
        return (byte) (sum >>> FRACTION_BITS);
    }
}
