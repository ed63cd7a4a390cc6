package dev.lampwright.page;

import dev.lampwright.colour.Decoder;
import dev.lampwright.colour.Srgb;
import dev.lampwright.config.Config;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;
import java.util.Base64;

/** Frames as sent to the page: the colours of the strip for a screen, and the dimmers' shares. For one thread. */
final class FrameMessage {
    private static final int COLOURS = 3;
    private static final int FULL = 255;
    private static final double FULL_DUTY = 65_535;
    private static final double FINEST = 10_000;
    private static final byte[] SCREEN = screen();

    private final int layout;
    private final Decoder decoder;
    private final byte[] colours;
    private final Frame told;
    private String toldLook = "";

    /**
     * Starts.
     *
     * @param layout number of the layout that the frames are for
     * @param config the configuration of the frames
     */
    FrameMessage(int layout, Config config) {
        this.layout = layout;
        decoder = new Decoder(config.setup().order());
        colours = new byte[COLOURS * config.fitting().pixels()];
        told = new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
    }

    /** Whether a frame differs from the one in the last message. */
    boolean isNew(Frame frame, String look) {
        return !look.equals(toldLook)
                || !Arrays.equals(frame.strip(), told.strip())
                || !Arrays.equals(frame.duties(), told.duties());
    }

    /**
     * The message.
     *
     * @param frame what is shown
     * @param look name of the current look
     * @param millis the time, in ms on any clock that only the page compares
     * @return JSON in one line; {@code strip} is base64 of red, green and blue of each pixel, encoded as sRGB
     */
    String of(Frame frame, String look, long millis) {
        return object(frame, look, millis).text();
    }

    /** The same as part of another message. */
    JsonObject object(Frame frame, String look, long millis) {
        told.copyFrom(frame);
        toldLook = look;
        for (int i = 0; i < colours.length; i++) {
            float light = decoder.light(frame.strip(), i / COLOURS, i % COLOURS);
            colours[i] = SCREEN[Math.round(light * FULL)];
        }
        JsonArray duties = new JsonArray();
        for (int duty : frame.duties()) {
            duties.add(Math.rint(duty / FULL_DUTY * FINEST) / FINEST);
        }
        return new JsonObject()
                .put("layout", layout)
                .put("at_ms", millis)
                .put("look", look)
                .put("strip", Base64.getEncoder().encodeToString(colours))
                .put("duties", duties);
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
