package dev.lampwright.page;

import dev.lampwright.colour.ScreenPixels;
import dev.lampwright.config.Config;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;
import java.util.Base64;

/** Frames as sent to the page: the colours of the strip for a screen, and the dimmers' shares. For one thread. */
final class FrameMessage {
    private static final double FULL_DUTY = 65_535;
    private static final double FINEST = 10_000;

    private final int layout;
    private final ScreenPixels screen;
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
        screen = new ScreenPixels(config.setup().order(), config.fitting().pixels());
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
        JsonArray duties = new JsonArray();
        for (int duty : frame.duties()) {
            duties.add(Math.rint(duty / FULL_DUTY * FINEST) / FINEST);
        }
        return new JsonObject()
                .put("layout", layout)
                .put("at_ms", millis)
                .put("look", look)
                .put("strip", Base64.getEncoder().encodeToString(screen.of(frame.strip())))
                .put("duties", duties);
    }
}
