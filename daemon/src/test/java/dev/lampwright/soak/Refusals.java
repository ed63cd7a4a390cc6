package dev.lampwright.soak;

import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import java.io.ByteArrayOutputStream;
import java.util.function.UnaryOperator;

/** Makes a complaint of every acknowledgement of a frame, by {@code wire.md}, COMPLAINT, code 6. For one thread. */
final class Refusals implements UnaryOperator<byte[]>, MessageReader.Handler {
    private static final int LARGEST = 4096;

    private final MessageReader reader = new MessageReader(LARGEST);
    private final MessageWriter writer = new MessageWriter(LARGEST);
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    @Override
    public byte[] apply(byte[] bytes) {
        out.reset();
        reader.accept(bytes, 0, bytes.length, this);
        return out.toByteArray();
    }

    @Override
    public void message(Message message) {
        byte[] body = message.body();
        int count = message.type() == MessageType.SHOWN
                ? Complaint.LENGTH.write(writer, message.sequence(), 0)
                : writer.begin(message.type(), message.sequence())
                        .bytes(body, 0, body.length)
                        .finish();
        out.write(writer.wire(), 0, count);
    }

    @Override
    public void broken(int bytes) {
        // What is no message does not pass.
    }
}
