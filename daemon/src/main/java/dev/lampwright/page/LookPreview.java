package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.cue.Wishes;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.Daemon;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import dev.lampwright.look.LookSpec;
import dev.lampwright.protocol.Frame;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * A look as it would appear on the strip now, frame by frame, but only on the page: with the printer's current status, the requested
 * brightness, and the guards applied. One is created at a time.
 */
final class LookPreview implements Document {
    private static final String LOOK = "look=";
    private static final int FRAMES_PER_S = 20;
    private static final int SECONDS = 6;
    /** The page draws every second one. */
    private static final int STEP = 2;

    private static final long FRAME_NANOS = TimeUnit.SECONDS.toNanos(1) / FRAMES_PER_S;

    private final Daemon daemon;

    LookPreview(Daemon daemon) {
        this.daemon = daemon;
    }

    /**
     * Draws it.
     *
     * @param query {@code look=NAME}, percent-encoded
     * @return {@code {"look":"held","step_ms":100,"frames":[…]}} with frames as in {@link FrameMessage}; empty if there is no such look
     */
    @Override
    public synchronized Optional<StaticFile> make(String query) {
        Config config = daemon.tap().config();
        return name(query).flatMap(config.light()::look).map(look -> StaticFile.json(json(config, look)));
    }

    private static Optional<String> name(String query) {
        try {
            return query.startsWith(LOOK)
                    ? Optional.of(URLDecoder.decode(query.substring(LOOK.length()), StandardCharsets.UTF_8))
                    : Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private String json(Config config, LookSpec look) {
        Chain chain = Chain.of(config.setup(), config.light().showing(look), FRAMES_PER_S);
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        FrameMessage message = new FrameMessage(0, config);
        Wishes wishes = daemon.desk().wishes().withLook("", 0).withPixels(new float[0], 0);
        JsonArray frames = new JsonArray();
        long nanos = System.nanoTime();
        for (int i = 0; i < FRAMES_PER_S * SECONDS; i++, nanos += FRAME_NANOS) {
            chain.make(daemon.statuses(), wishes, nanos, frame);
            if (i % STEP == 0) {
                frames.add(message.object(frame, look.name(), i * FRAME_NANOS / TimeUnit.MILLISECONDS.toNanos(1)));
            }
        }
        return new JsonObject()
                .put("look", look.name())
                .put("step_ms", STEP * TimeUnit.NANOSECONDS.toMillis(FRAME_NANOS))
                .put("frames", frames)
                .text();
    }
}
