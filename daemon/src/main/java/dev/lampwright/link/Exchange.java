package dev.lampwright.link;

import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * Messages out and answers in over one line, each message with the time by which its answer is due. For the link's thread only.
 * Frames allocate nothing.
 */
final class Exchange {
    /** What an answer may take beyond the times on the line and on the strip. */
    private static final long MARGIN_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

    private static final long MILLI_NANOS = TimeUnit.MILLISECONDS.toNanos(1);

    /** Start bit, eight data bits and stop bit. */
    private static final long BYTE_NANOS_AT_ONE_BAUD = TimeUnit.SECONDS.toNanos(10);

    private static final int LARGEST_ANSWER = 2048;
    private static final int ORDINARY_ANSWER = 32;
    private static final int NO_FRAME = -1;
    private static final byte[] ZERO = {0};

    private final Line line;
    private final LongSupplier clock;
    private final Tally tally;
    private final Deliveries deliveries;
    private final Credit credit = new Credit();
    private final Answers answers;
    private final MessageReader reader = new MessageReader(LARGEST_ANSWER);
    private final MessageWriter writer = new MessageWriter(Setup.LARGEST_BODY);
    private final byte[] received = new byte[512];

    private int sequence;
    private int frameSequence = NO_FRAME;
    private boolean frameShown;
    private long sentAt;
    private long lineFree;
    private long controllerFree;

    Exchange(Line line, LongSupplier clock, Tally tally, Deliveries deliveries) {
        this.line = line;
        this.clock = clock;
        this.tally = tally;
        this.deliveries = deliveries;
        answers = new Answers(credit, tally, this::shown);
    }

    private void shown(int shownSequence) {
        deliveries.shown(shownSequence, clock.getAsLong());
        frameShown |= shownSequence == frameSequence;
    }

    /** The name of the line, for the user. */
    String port() {
        return line.name();
    }

    /** What the controller has said. */
    Answers answers() {
        return answers;
    }

    /** The messages that wait for an answer. */
    Credit credit() {
        return credit;
    }

    /** Forgets all that was said, and ends whatever stood on the line before. One message may be unanswered. */
    void restart() throws LineException {
        reader.restart();
        answers.forget();
        credit.restart(1);
        line.write(ZERO, ZERO.length);
    }

    /** Asks who is there. */
    void sendHello() throws LineException {
        next();
        int count = writer.begin(MessageType.HELLO, sequence)
                .u8(Message.WIRE_VERSION)
                .finish();
        send(writer.wire(), count, 0);
    }

    /** Says what is fitted. The answer is as long. */
    void sendSetup(Setup setup) throws LineException {
        next();
        int count = setup.write(writer, MessageType.SETUP, sequence);
        send(writer.wire(), count, lineNanos(count));
    }

    /**
     * Says goodbye.
     *
     * @param what is to be shown from now on
     * @param stripNanos what the strip takes
     */
    void sendRest(WhenSilent what, long stripNanos) throws LineException {
        next();
        int count = writer.begin(MessageType.REST, sequence).u8(what.code()).finish();
        send(writer.wire(), count, stripNanos);
    }

    /** Begins with another frame, or with the same once more. */
    void beginFrame() {
        frameSequence = NO_FRAME;
        frameShown = false;
    }

    /** Whether the controller has said that it shows the frame that was begun last. */
    boolean isFrameShown() {
        return frameShown;
    }

    /** How long ago something was sent, in ns. */
    long sinceSent() {
        return clock.getAsLong() - sentAt;
    }

    /**
     * Sends the next part of a frame.
     *
     * @param parts one that is not done
     * @param stripNanos what the strip takes for the whole frame
     * @param made when the frame was made, in ns of the link's clock
     */
    void sendPart(FrameParts parts, long stripNanos, long made) throws LineException {
        next();
        int count = parts.next(sequence);
        send(parts.wire(), count, parts.done() ? stripNanos : 0);
        tally.partsSent.incrementAndGet();
        if (parts.done()) {
            deliveries.sent(sequence, made);
            frameSequence = sequence;
            tally.framesSent.incrementAndGet();
        }
    }

    /**
     * Waits for bytes and takes the answers in them.
     *
     * @param nanos how long to wait for the first; 0 or less does not wait
     * @return whether there may be more to take at once
     */
    boolean receive(long nanos) throws LineException {
        int millis = (int) Math.max(0, (nanos + MILLI_NANOS - 1) / MILLI_NANOS);
        int count = line.read(received, millis);
        reader.accept(received, 0, count, answers);
        return count == received.length;
    }

    /** Gives back the credit of messages whose answer is overdue. */
    void expire() {
        answers.lost(credit.expire(clock.getAsLong()));
    }

    /** How long until the oldest message that waits counts as lost, in ns; one must be waiting. */
    long nanosToDeadline() {
        return credit.oldestDeadline() - clock.getAsLong();
    }

    /** Whether an answer has been overdue for so many ns and none has come, whatever was sent since. */
    boolean isSilentFor(long nanos) {
        return credit.silentNanos(clock.getAsLong()) > nanos;
    }

    private void next() {
        sequence = (sequence + 1) & 0xFF;
    }

    /** Sends the message of the sequence number now in use, which keeps the controller busy for some time of its own. */
    private void send(byte[] wire, int count, long workNanos) throws LineException {
        line.write(wire, count);
        long now = clock.getAsLong();
        sentAt = now;
        if (credit.idle()) {
            lineFree = now;
            controllerFree = now;
        }
        lineFree = later(now, lineFree) + lineNanos(count);
        controllerFree = later(lineFree, controllerFree) + workNanos;
        credit.spend(sequence, controllerFree + lineNanos(ORDINARY_ANSWER) + MARGIN_NANOS);
    }

    /** How long bytes take on the line, in ns. */
    long lineNanos(int bytes) {
        return bytes * BYTE_NANOS_AT_ONE_BAUD / line.baud();
    }

    private static long later(long one, long other) {
        return one - other > 0 ? one : other;
    }
}
