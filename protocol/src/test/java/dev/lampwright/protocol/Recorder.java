package dev.lampwright.protocol;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Keeps what a reader passes on. */
final class Recorder implements MessageReader.Handler {
    /** A copy of one message; the body is hexadecimal so that two can be compared. */
    record Copy(int type, int sequence, String body) {
        static Copy of(int type, int sequence, byte[] body) {
            return new Copy(type, sequence, Vectors.HEX.formatHex(body));
        }
    }

    final List<Copy> messages = new ArrayList<>();
    final List<Integer> broken = new ArrayList<>();

    @Override
    public void message(Message message) {
        messages.add(Copy.of(message.typeCode(), message.sequence(), message.body()));
    }

    @Override
    public void broken(int bytes) {
        broken.add(bytes);
    }

    static Recorder of(byte[] stream) {
        Recorder recorder = new Recorder();
        new MessageReader(2048).accept(stream, 0, stream.length, recorder);
        return recorder;
    }

    static byte[] wire(MessageWriter writer, int length) {
        return Arrays.copyOf(writer.wire(), length);
    }
}
