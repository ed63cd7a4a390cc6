package dev.lampwright.benchmark;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The wire alone: a frame of 300 pixels and a dimmer in one message. */
@State(Scope.Thread)
public class WireBenchmark {
    private static final int PIXELS = 300;

    private final Frame frame = Bench.frame(PIXELS);
    private final FrameParts parts = new FrameParts(3 * PIXELS, 1, Bench.PACKET_BYTES);
    private final MessageReader reader = new MessageReader(Bench.PACKET_BYTES);
    private final Lengths lengths = new Lengths();
    private final byte[] wire;

    /** Writes the message that is read. */
    public WireBenchmark() {
        int length = encode();
        wire = new byte[length];
        System.arraycopy(parts.wire(), 0, wire, 0, length);
    }

    /**
     * Writes it.
     *
     * @return bytes on the wire
     */
    @Benchmark
    public int encode() {
        parts.begin(frame);
        return parts.next(1);
    }

    /**
     * Reads it.
     *
     * @return bytes of the bodies so far
     */
    @Benchmark
    public long decode() {
        reader.accept(wire, 0, wire.length, lengths);
        return lengths.sum;
    }

    private static final class Lengths implements MessageReader.Handler {
        private long sum;

        @Override
        public void message(Message message) {
            sum += message.bodyLength();
        }

        @Override
        public void broken(int bytes) {
            throw new IllegalStateException("a message of " + bytes + " bytes was not understood");
        }
    }
}
