package dev.lampwright.benchmark;

import dev.lampwright.colour.Calibration;
import dev.lampwright.colour.Encoder;
import dev.lampwright.colour.StripSpec;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** From light to bytes: 300 pixels. */
@State(Scope.Thread)
public class EncoderBenchmark {
    private static final int PIXELS = 300;

    private final float[] light = Bench.light(PIXELS);
    private final byte[] three = new byte[3 * PIXELS];
    private final byte[] four = new byte[4 * PIXELS];
    private final Encoder plain = StripSpec.plain(PIXELS, "GRB").make();
    private final Encoder white = StripSpec.plain(PIXELS, "GRBW").make();
    private final Encoder dithering = new StripSpec(PIXELS, "GRB", Calibration.none(), true).make();

    /**
     * Three channels.
     *
     * @return the bytes
     */
    @Benchmark
    public byte[] rgb() {
        plain.encode(light, three);
        return three;
    }

    /**
     * Four channels, with white extracted.
     *
     * @return the bytes
     */
    @Benchmark
    public byte[] rgbw() {
        white.encode(light, four);
        return four;
    }

    /**
     * Three channels, dithered.
     *
     * @return the bytes
     */
    @Benchmark
    public byte[] dithered() {
        dithering.encode(light, three);
        return three;
    }
}
