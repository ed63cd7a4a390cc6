package dev.lampwright.endtoend;

import dev.lampwright.link.LineException;
import dev.lampwright.link.SerialLine;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.protocol.Setup;
import dev.lampwright.testing.Await;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A host that implements the wire and has no limits of its own. */
final class BareHost implements AutoCloseable {
    private static final int ANSWER_WAIT_MILLIS = 200;

    /** The offset of the maximum packet length in HERE, by wire.md. */
    private static final int MOST_PACKET_BYTES_AT = 14;

    private final SerialLine line;
    private final MessageReader reader = new MessageReader(2048);
    private final MessageWriter writer = new MessageWriter(Setup.LARGEST_BODY);
    private final byte[] received = new byte[2048];
    private final int mostPacketBytes;
    private int sequence;
    private Optional<Answer> answer = Optional.empty();

    /**
     * What the controller answered.
     *
     * @param type type of the message
     * @param body its body
     */
    record Answer(MessageType type, List<Integer> body) {
        /** A number of two bytes in the body. */
        int u16(int at) {
            return 256 * body.get(at) + body.get(at + 1);
        }
    }

    /**
     * Opens the line and sends HELLO until it is answered.
     *
     * @param port device node
     * @param baud its rate
     */
    BareHost(Path port, int baud) throws LineException {
        line = new SerialLine(port.toString(), baud);
        line.open();
        line.write(new byte[1], 1);
        Await.until("the controller answers", this::isThere);
        mostPacketBytes = answer.orElseThrow().u16(MOST_PACKET_BYTES_AT);
    }

    private boolean isThere() {
        int count = writer.begin(MessageType.HELLO, ++sequence & 0xFF)
                .u8(Message.WIRE_VERSION)
                .finish();
        return exchange(writer.wire(), count)
                .filter(said -> said.type == MessageType.HERE)
                .isPresent();
    }

    /**
     * Sends a set-up.
     *
     * @param setup any that the controller supports
     */
    void setUp(Setup setup) {
        int count = setup.write(writer, MessageType.SETUP, ++sequence & 0xFF);
        Answer said = exchange(writer.wire(), count).orElseThrow();
        if (said.type != MessageType.IN_FORCE) {
            throw new AssertionError("the set-up was answered by " + said.type);
        }
    }

    /**
     * Sends a frame in one part.
     *
     * @param frame any frame of the set-up's size
     * @return the answer
     */
    Answer show(Frame frame) {
        FrameParts parts = new FrameParts(frame.strip().length, frame.duties().length, mostPacketBytes);
        parts.begin(frame);
        int count = parts.next(++sequence & 0xFF);
        Answer said = exchange(parts.wire(), count).orElseThrow();
        if (said.type != MessageType.SHOWN) {
            throw new AssertionError("the frame was answered by " + said.type);
        }
        return said;
    }

    private Optional<Answer> exchange(byte[] wire, int count) {
        answer = Optional.empty();
        try {
            line.write(wire, count);
            for (int tries = 0; tries < 5 && answer.isEmpty(); tries++) {
                int heard = line.read(received, ANSWER_WAIT_MILLIS);
                reader.accept(received, 0, heard, new Listener());
            }
            return answer;
        } catch (LineException e) {
            throw new AssertionError(e);
        }
    }

    private static List<Integer> unsigned(byte[] bytes) {
        List<Integer> values = new ArrayList<>();
        for (byte value : bytes) {
            values.add(value & 0xFF);
        }
        return values;
    }

    @Override
    public void close() {
        line.close();
    }

    private final class Listener implements MessageReader.Handler {
        @Override
        public void message(Message message) {
            if (answer.isEmpty() && message.sequence() == (sequence & 0xFF)) {
                answer = Optional.of(new Answer(message.type(), unsigned(message.body())));
            }
        }

        @Override
        public void broken(int bytes) {
            // What the controller sent before the line was opened.
        }
    }
}
