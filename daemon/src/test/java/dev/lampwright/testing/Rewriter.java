package dev.lampwright.testing;

import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.function.UnaryOperator;

/** Changes the bodies of whole messages in transit, and corrects their checksums. */
public final class Rewriter implements UnaryOperator<byte[]>, MessageReader.Handler {
    private final MessageType type;
    private final MessageType becomes;
    private final UnaryOperator<byte[]> change;
    private final MessageReader reader = new MessageReader(4096);
    private final MessageWriter writer = new MessageWriter(4096);
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    /** Changes the bodies of the messages of one type; the others pass unchanged. */
    public Rewriter(MessageType type, UnaryOperator<byte[]> change) {
        this(type, type, change);
    }

    private Rewriter(MessageType type, MessageType becomes, UnaryOperator<byte[]> change) {
        this.type = type;
        this.becomes = becomes;
        this.change = change;
    }

    /** Makes messages of another type out of those of one type. */
    public static Rewriter to(MessageType type, MessageType becomes, UnaryOperator<byte[]> change) {
        return new Rewriter(type, becomes, change);
    }

    /** Sets one byte of each body. */
    public static Rewriter set(MessageType type, int at, int value) {
        return new Rewriter(type, body -> {
            body[at] = (byte) value;
            return body;
        });
    }

    @Override
    public byte[] apply(byte[] bytes) {
        out.reset();
        reader.accept(bytes, 0, bytes.length, this);
        return out.toByteArray();
    }

    @Override
    public void message(Message message) {
        byte[] body = message.type() == type ? change.apply(message.body()) : message.body();
        MessageType sent = message.type() == type ? becomes : message.type();
        int count = writer.begin(sent, message.sequence())
                .bytes(body, 0, body.length)
                .finish();
        out.writeBytes(Arrays.copyOf(writer.wire(), count));
    }

    @Override
    public void broken(int bytes) {
        // What is not a message does not pass.
    }
}
