package dev.lampwright.soak;

import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import java.util.ArrayList;
import java.util.List;

/** Listens to what the daemon sends, before anything has happened to it. For one thread. */
final class Tap implements MessageReader.Handler {
    private static final int LARGEST = 4096;
    private static final int DUTIES_AT = 3;
    private static final int STRIP_AT = 5;

    private final MessageReader reader = new MessageReader(LARGEST);
    private final SentCheck check;
    private long frames;
    private long broken;

    Tap(SentCheck check) {
        this.check = check;
    }

    /** Accepts bytes, and returns them unchanged. */
    byte[] take(byte[] bytes) {
        reader.accept(bytes, 0, bytes.length, this);
        return bytes;
    }

    @Override
    public void message(Message message) {
        if (message.type() == MessageType.FRAME) {
            byte[] body = message.body();
            frames++;
            check.sent(
                    message.sequence(),
                    unsigned(body, STRIP_AT, body.length),
                    List.of((body[DUTIES_AT] & 0xFF) << 8 | (body[DUTIES_AT + 1] & 0xFF)));
        }
    }

    @Override
    public void broken(int bytes) {
        broken++;
    }

    /** Frames that were sent. The soak's strip is short enough for one part. */
    long frames() {
        return frames;
    }

    /** Packets that were incomplete before they came here: the cable was pulled. */
    long broken() {
        return broken;
    }

    private static List<Integer> unsigned(byte[] bytes, int from, int to) {
        List<Integer> values = new ArrayList<>();
        for (int i = from; i < to; i++) {
            values.add(bytes[i] & 0xFF);
        }
        return List.copyOf(values);
    }
}
