package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.look.LookSpec;
import dev.lampwright.protocol.Frame;
import dev.lampwright.tool.replay.Replay;
import dev.lampwright.tool.replay.SignalSweep;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * What a look shows while everything heats up and a job goes from its beginning to its end.
 *
 * @param strips the bytes of the strip at equal intervals
 */
record LookSample(List<byte[]> strips) {
    private static final double SECONDS = 12;
    private static final double NANOS_PER_SECOND = 1e9;
    private static final double FULL = 255;

    /**
     * Draws the strips.
     *
     * @param config the lights
     * @param look the look, for these lights
     * @param count how many strips to keep: the last one shows the end of the twelve seconds
     * @return the strips
     */
    static LookSample of(Config config, LookSpec look, int count) throws IOException {
        Replay replay = Replay.of(
                config,
                look,
                SignalSweep.timeline(
                        SECONDS,
                        config.light().room().ambientC(),
                        config.bindings().own().keySet()));
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        List<byte[]> strips = new ArrayList<>();
        while (strips.size() < count) {
            replay.next(frame);
            if (replay.nanos() >= (strips.size() + 1) * SECONDS * NANOS_PER_SECOND / count) {
                strips.add(frame.strip().clone());
            }
        }
        return new LookSample(strips);
    }

    /** The strip at half time. */
    byte[] middle() {
        return strips.get(strips.size() / 2);
    }

    /** The mean light of all strips, as a share of the maximum. */
    double share() {
        long sum = 0;
        long channels = 0;
        for (byte[] strip : strips) {
            for (byte channel : strip) {
                sum += channel & 0xFF;
            }
            channels += strip.length;
        }
        return sum / FULL / channels;
    }
}
