package dev.lampwright.protocol;

/**
 * What the lights draw from each supply, calculated from the exact bytes of a frame with whole numbers, and the clamp that keeps it under
 * the ceiling. The formula is that of {@code firmware-notes/wire.md}, section 4, which the controller uses too.
 *
 * <p>Currents are in <em>grains</em> of 1/65535 µA, in which neither a byte's share of 255 nor a duty's share of 65535 leaves a remainder.
 * All methods allocate nothing.
 */
public final class SupplyDraw {
    /** Grains in one mA. */
    public static final long GRAINS_PER_MILLIAMP = 65535L * 1000;

    /** The factor that leaves light unchanged. */
    public static final long WHOLE = 1L << 16;

    private static final long GRAINS_PER_BYTE_MICROAMP = 257;
    private static final long GRAINS_PER_DUTY_MILLIAMP = 1000;

    private final int channels;
    private final int stripSupply;
    private final long[] channelMicroamps;
    private final int[] dimmerSupply;
    private final long[] dimmerMilliamps;
    private final long[] idle;
    private final long[] limit;

    /**
     * Prepares the calculation for one set-up.
     *
     * @param setup what is fitted
     */
    public SupplyDraw(Setup setup) {
        channels = setup.channels();
        stripSupply = setup.stripSupply();
        channelMicroamps =
                setup.channelMicroamps().stream().mapToLong(Integer::longValue).toArray();
        dimmerSupply = setup.dimmers().stream().mapToInt(Setup.Dimmer::supply).toArray();
        dimmerMilliamps =
                setup.dimmers().stream().mapToLong(Setup.Dimmer::fullMilliamps).toArray();
        limit = setup.ceilingsMilliamps().stream()
                .mapToLong(ceiling -> ceiling * GRAINS_PER_MILLIAMP)
                .toArray();
        idle = new long[limit.length];
        idle[stripSupply] = 65535L * setup.pixels() * setup.darkMicroamps();
    }

    /**
     * How many supplies there are.
     *
     * @return 1 to 4
     */
    public int supplies() {
        return limit.length;
    }

    /**
     * What a supply delivers when everything is dark.
     *
     * @param supply its index
     * @return grains
     */
    public long idle(int supply) {
        return idle[supply];
    }

    /**
     * The most that a supply may deliver.
     *
     * @param supply its index
     * @return grains
     */
    public long limit(int supply) {
        return limit[supply];
    }

    /**
     * Which supply feeds the strip.
     *
     * @return its index
     */
    public int stripSupply() {
        return stripSupply;
    }

    /**
     * Which supply feeds a dimmer.
     *
     * @param dimmer its index
     * @return the supply's index
     */
    public int supplyOf(int dimmer) {
        return dimmerSupply[dimmer];
    }

    /**
     * The current of each step of one byte of the strip.
     *
     * @param channel place in the strip's order
     * @return grains per step; 255 steps are full duty
     */
    public long grainsPerStep(int channel) {
        return channelMicroamps[channel] * GRAINS_PER_BYTE_MICROAMP;
    }

    /**
     * The current of each step of a dimmer's duty.
     *
     * @param dimmer its index
     * @return grains per step; 65535 steps are full duty
     */
    public long grainsPerDutyStep(int dimmer) {
        return dimmerMilliamps[dimmer] * GRAINS_PER_DUTY_MILLIAMP;
    }

    /**
     * What a frame draws from a supply in addition to {@link #idle}.
     *
     * @param supply its index
     * @param frame the frame, of the set-up's size
     * @return grains
     */
    public long load(int supply, Frame frame) {
        long load = supply == stripSupply ? stripLoad(frame.strip()) : 0;
        int[] duties = frame.duties();
        for (int i = 0; i < duties.length; i++) {
            if (dimmerSupply[i] == supply) {
                load += duties[i] * dimmerMilliamps[i] * GRAINS_PER_DUTY_MILLIAMP;
            }
        }
        return load;
    }

    /**
     * The factor that brings a load under the ceiling.
     *
     * @param supply index of the supply
     * @param load grains in addition to {@link #idle}
     * @return 0 to {@link #WHOLE}, in parts of {@link #WHOLE}; {@link #WHOLE} if nothing needs dimming
     */
    public long factor(int supply, long load) {
        long room = Math.max(0, limit[supply] - idle[supply]);
        return load <= room && idle[supply] <= limit[supply] ? WHOLE : room * WHOLE / Math.max(1, load);
    }

    /**
     * Dims everything on a supply equally. Every value is rounded down.
     *
     * @param supply its index
     * @param factor 0 to {@link #WHOLE}, in parts of {@link #WHOLE}
     * @param frame the frame to dim
     */
    public void dim(int supply, long factor, Frame frame) {
        if (supply == stripSupply) {
            byte[] strip = frame.strip();
            for (int i = 0; i < strip.length; i++) {
                strip[i] = (byte) (((strip[i] & 0xFF) * factor) >> 16);
            }
        }
        int[] duties = frame.duties();
        for (int i = 0; i < duties.length; i++) {
            if (dimmerSupply[i] == supply) {
                duties[i] = (int) ((duties[i] * factor) >> 16);
            }
        }
    }

    private long stripLoad(byte[] strip) {
        long load = 0;
        for (int channel = 0; channel < channels; channel++) {
            long sum = 0;
            for (int i = channel; i < strip.length; i += channels) {
                sum += strip[i] & 0xFF;
            }
            load += sum * channelMicroamps[channel];
        }
        return load * GRAINS_PER_BYTE_MICROAMP;
    }
}
