package dev.lampwright.benchmark;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.FrameParts;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Random;

/** A strip of 300 pixels with a printer in the middle of a job, and the whole path of a frame to the wire, one tick later each time. */
final class Bench {
    /** Packet size in bytes that the larger boards accept. */
    static final int PACKET_BYTES = 1024;

    private static final long TICK_NANOS = 16_666_667;
    private static final Duration NEVER = Duration.ofDays(10_000);
    private static final long SEED = 20;

    private final PrinterStatus status = status();
    private final Chain chain;
    private final Frame frame;
    private final FrameParts parts;
    private long nanos;

    /**
     * Sets up.
     *
     * @param config what is fitted
     * @param light what to show
     */
    Bench(Config config, LightSpec light) {
        LightSpec never = light.silentAfter(NEVER);
        chain = Chain.of(config.setup(), never, config.framesPerSecond());
        int dimmers = config.setup().dimmers().size();
        frame = new Frame(config.setup().stripBytes(), dimmers);
        parts = new FrameParts(config.setup().stripBytes(), dimmers, PACKET_BYTES);
    }

    /**
     * The configuration of the benchmarks, with light that moves.
     *
     * @return the same each time
     */
    static Config config() {
        return config("eight");
    }

    /**
     * The configuration of the benchmarks.
     *
     * @param look {@code eight}, or {@code still}, which does not move
     * @return the same each time
     */
    static Config config(String look) {
        try (InputStream file = Bench.class.getResourceAsStream("eight-layers.toml")) {
            String text = new String(file.readAllBytes(), StandardCharsets.UTF_8);
            return ConfigFile.read(text + "\n[[cues]]\nlook = \"" + look + "\"\n", "eight-layers.toml");
        } catch (IOException | ConfigException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * Light to encode.
     *
     * @param pixels how many
     * @return premultiplied linear light, four floats per pixel
     */
    static float[] light(int pixels) {
        Random random = new Random(SEED);
        float[] rgba = new float[4 * pixels];
        for (int i = 0; i < rgba.length; i++) {
            rgba[i] = random.nextFloat();
        }
        return rgba;
    }

    /**
     * A frame with every byte in use.
     *
     * @param pixels how many
     * @return three bytes per pixel, and one dimmer
     */
    static Frame frame(int pixels) {
        Frame frame = new Frame(3 * pixels, 1);
        new Random(SEED).nextBytes(frame.strip());
        frame.duties()[0] = 40_000;
        return frame;
    }

    /**
     * Makes the next frame and writes it.
     *
     * @return bytes on the wire
     */
    int next() {
        nanos += TICK_NANOS;
        chain.make(status, nanos, frame);
        parts.begin(frame);
        int bytes = 0;
        while (!parts.done()) {
            bytes += parts.next(bytes);
        }
        return bytes;
    }

    private static PrinterStatus status() {
        return PrinterStatus.nothingHeard()
                .withState(PrinterState.PRINTING, 0)
                .withReading(Quantity.BED_SETPOINT, 60, 0)
                .withReading(Quantity.BED_ACTUAL, 47.3, 0)
                .withReading(Quantity.NOZZLE_SETPOINT, 215, 0)
                .withReading(Quantity.NOZZLE_ACTUAL, 180.5, 0)
                .withReading(Quantity.JOB_PROGRESS, 0.618, 0);
    }
}
