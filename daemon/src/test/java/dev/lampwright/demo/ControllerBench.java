package dev.lampwright.demo;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Recording;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.function.UnaryOperator;

/** An in-memory controller on the bench: it receives bytes one by one at a time that the test sets, and its answers are kept. */
final class ControllerBench {
    /**
     * An answer.
     *
     * @param type its type
     * @param sequence its sequence number
     * @param body its body in hexadecimal
     * @param wire all of it as sent over the line, in hexadecimal
     * @param nanos when it could be sent
     */
    record Answer(MessageType type, int sequence, String body, String wire, long nanos) {}

    final Recording recording = new Recording();
    final MemoryController controller;
    final List<Answer> answers = new ArrayList<>();
    private final MessageWriter writer = new MessageWriter(4096);
    private final MessageReader reader = new MessageReader(4096);
    long now;

    ControllerBench(Here here) {
        controller = new MemoryController(here, recording);
        controller.connect(this::hear);
        controller.start(0);
    }

    /** The board of the worked example, which has sent its first message. */
    static ControllerBench board() {
        ControllerBench bench = new ControllerBench(MemoryController.BOARD);
        bench.answers.clear();
        return bench;
    }

    /** The set-up of the worked example: two pixels in GRB order, 12 mA per channel, 1 mA dark, beacon after 3 s. */
    static Setup setup(int ceilingMilliamps, WhenSilent whenSilent, List<Setup.Dimmer> dimmers) {
        return new Setup(
                2,
                "GRB",
                List.of(12_000, 12_000, 12_000),
                1000,
                0,
                3000,
                whenSilent,
                List.of(ceilingMilliamps),
                dimmers);
    }

    ControllerBench setUp(Setup setup) {
        tell(writer.wire(), setup.write(writer, MessageType.SETUP, 2));
        answers.clear();
        recording.clear();
        return this;
    }

    ControllerBench setUp() {
        return setUp(setup(1500, WhenSilent.BEACON, List.of()));
    }

    void tell(MessageType type, int sequence, String bodyHex) {
        byte[] body = HexFormat.of().parseHex(bodyHex.replace(" ", ""));
        tell(
                writer.wire(),
                writer.begin(type, sequence).bytes(body, 0, body.length).finish());
    }

    void tell(byte[] wire, int count) {
        for (int i = 0; i < count; i++) {
            controller.receive(wire[i], now);
        }
    }

    void tellHex(String wireHex) {
        byte[] wire = HexFormat.of().parseHex(wireHex.replace(" ", ""));
        tell(wire, wire.length);
    }

    /** Lets time pass, in ms. */
    void pass(long millis) {
        now += millis * 1_000_000;
        controller.pass(now);
    }

    /** The only answer since the last call. */
    Answer answer() {
        if (answers.size() != 1) {
            throw new AssertionError("one answer was due, not " + answers);
        }
        return answers.remove(0);
    }

    /** Sends a frame in as many parts as packets of this size require, over a line with faults. */
    void frame(Frame frame, int mostPacketBytes, UnaryOperator<byte[]> faults) {
        FrameParts parts = new FrameParts(frame.strip().length, frame.duties().length, mostPacketBytes);
        parts.begin(frame);
        int sequence = 10;
        while (!parts.done()) {
            int count = parts.next(sequence++);
            byte[] arrived = faults.apply(Arrays.copyOf(parts.wire(), count));
            tell(arrived, arrived.length);
        }
    }

    private void hear(byte[] bytes, int count, long nanos) {
        HexFormat hex = HexFormat.of();
        String wire = hex.formatHex(bytes, 0, count);
        reader.accept(bytes, 0, count, new MessageReader.Handler() {
            @Override
            public void message(Message message) {
                answers.add(new Answer(message.type(), message.sequence(), hex.formatHex(message.body()), wire, nanos));
            }

            @Override
            public void broken(int bytesBroken) {
                throw new AssertionError("the controller sent a broken packet");
            }
        });
    }
}
