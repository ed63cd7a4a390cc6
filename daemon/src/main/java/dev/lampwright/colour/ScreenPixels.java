package dev.lampwright.colour;

/** Light as a screen shows it: red, green and blue of each pixel in a byte, encoded as sRGB. For one thread. */
public final class ScreenPixels {
    private static final int COLOURS = 3;
    private static final int FULL = 255;
    private static final byte[] SCREEN = screen();

    private final Decoder decoder;
    private final byte[] colours;

    /**
     * Begins.
     *
     * @param order order of the strip's channels
     * @param pixels of the strip
     */
    public ScreenPixels(String order, int pixels) {
        decoder = new Decoder(order);
        colours = new byte[COLOURS * pixels];
    }

    /**
     * The strip's bytes as colours.
     *
     * @param strip bytes of a frame
     * @return three bytes for each pixel; the same array each time
     */
    public byte[] of(byte[] strip) {
        for (int i = 0; i < colours.length; i++) {
            colours[i] = encoded(decoder.light(strip, i / COLOURS, i % COLOURS));
        }
        return colours;
    }

    /**
     * One channel of linear light as a screen shows it, in the strip's 255 steps.
     *
     * @param light 0 to 1
     * @return sRGB
     */
    public static byte encoded(float light) {
        return SCREEN[Math.round(light * FULL)];
    }

    /** What a screen shows for each of the strip's 255 steps of light. */
    private static byte[] screen() {
        byte[] table = new byte[FULL + 1];
        for (int i = 0; i <= FULL; i++) {
            table[i] = (byte) Math.round(FULL * Srgb.encode((double) i / FULL));
        }
        return table;
    }
}
