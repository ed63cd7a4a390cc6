package dev.lampwright.colour;

/**
 * Turns linear light into a strip's bytes: calibration, white extraction for a strip with a white channel, the strip's order of channels,
 * rounding. The duty of an LED is linear in its light, so there is no gamma here. {@link StripSpec} describes the strip. Encoding allocates
 * nothing; for one strip, frame after frame.
 */
public final class Encoder {
    private static final int IN = 4;

    private final int channels;
    private final int[] source;
    private final PixelDuties drive;
    private final Rounding rounding;
    private final boolean isPlain;
    private final float[] duties = new float[IN];

    /**
     * Creates an encoder that has encoded nothing yet.
     *
     * @param strip what it encodes for
     */
    Encoder(StripSpec strip) {
        channels = strip.order().length();
        source = strip.order().chars().map("RGBW"::indexOf).toArray();
        drive = new PixelDuties(strip.calibration(), strip.hasWhite());
        rounding = strip.dithering() ? new Dithering(channels * strip.pixels()) : new NearestLevel();
        isPlain = isSteady() && drive.isPlain();
    }

    /**
     * Encodes a whole strip.
     *
     * @param rgba premultiplied linear light, four floats per pixel; values outside 0 to 1 are clipped, NaN is dark
     * @param strip where to write, as many bytes per pixel as the strip has channels
     */
    public void encode(float[] rgba, byte[] strip) {
        if (isPlain) {
            encodePlain(rgba, strip);
            return;
        }
        int in = 0;
        for (int out = 0; out < strip.length; out += channels) {
            drive.pixel(rgba, in, duties);
            strip[out] = rounding.level(duties[source[0]], out);
            strip[out + 1] = rounding.level(duties[source[1]], out + 1);
            strip[out + 2] = rounding.level(duties[source[2]], out + 2);
            if (channels == 4) {
                strip[out + 3] = rounding.level(duties[source[3]], out + 3);
            }
            in += IN;
        }
    }

    /** Unchanged light on three channels, rounded to the nearest level: the case of most strips. */
    private void encodePlain(float[] rgba, byte[] strip) {
        int first = source[0];
        int second = source[1];
        int third = source[2];
        for (int out = 0; out < strip.length; out += 3) {
            strip[out] = NearestLevel.of(rgba[first]);
            strip[out + 1] = NearestLevel.of(rgba[second]);
            strip[out + 2] = NearestLevel.of(rgba[third]);
            first += IN;
            second += IN;
            third += IN;
        }
    }

    /**
     * Whether the same light always becomes the same bytes.
     *
     * @return false if light is dithered
     */
    public boolean isSteady() {
        return rounding instanceof NearestLevel;
    }

    /** Turns a duty into one of the 256 levels that a strip takes. */
    private interface Rounding {
        /** The highest level. */
        int FULL = 255;

        /**
         * Rounds.
         *
         * @param duty values outside 0 to 1 are clipped
         * @param channel which of the strip's bytes it is for
         * @return the level as an unsigned byte
         */
        byte level(float duty, int channel);
    }

    /** Takes the nearest level. */
    private static final class NearestLevel implements Rounding {
        @Override
        public byte level(float duty, int channel) {
            return of(duty);
        }

        static byte of(float duty) {
            return (byte) (duty > 0 ? (duty < 1 ? duty * FULL + 0.5f : FULL) : 0);
        }
    }

    /**
     * Takes the level above or below so that the mean over time is exact: the rounding error is carried to the next frame, channel by
     * channel (first-order error feedback). A channel is never a whole level off, one that is dark or exactly on a level stays unchanged,
     * and after n frames the mean is off by less than 1/n level. In fixed point, so that the same frames give the same bytes on any
     * machine.
     */
    private static final class Dithering implements Rounding {
        private static final int FRACTION_BITS = 16;
        private static final int FRACTION = (1 << FRACTION_BITS) - 1;

        /** The fraction of the golden ratio: channels that would blink together start far apart. Common practice, no source. */
        private static final int SPREAD = 0x9E37;

        private final int[] carried;

        /**
         * Creates a rounding.
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
}
