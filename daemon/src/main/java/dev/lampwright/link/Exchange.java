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
 * Sends messages and receives answers over one line, with a deadline for each answer. For the link's thread only. Frames allocate nothing.
 */
final class Exchange {
    /** The time allowed for an answer in addition to the times on the line and on the strip. */
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

    /** What the controller has answered. */
    Answers answers() {
        return answers;
    }

    /** The messages waiting for an answer. */
    Credit credit() {
        return credit;
    }

    /** Forgets all answers, and terminates any partial packet on the line. One message may be unanswered. */
    void restart() throws LineException {
        reader.restart();
        answers.forget();
        credit.restart(1);
        line.write(ZERO, ZERO.length);
    }

    /** Identifies the controller. */
    void sendHello() throws LineException {
        next();
        int count = writer.begin(MessageType.HELLO, sequence)
                .u8(Message.WIRE_VERSION)
                .finish();
        send(writer.wire(), count, 0);
    }

    /** Sends the set-up. The answer has the same length. */
    void sendSetup(Setup setup) throws LineException {
        next();
        int count = setup.write(writer, MessageType.SETUP, sequence);
        send(writer.wire(), count, lineNanos(count));
    }

    /**
     * Sends the goodbye message.
     *
     * @param what to show from now on
     * @param stripNanos the strip's time for a frame
     */
    void sendRest(WhenSilent what, long stripNanos) throws LineException {
        next();
        int count = writer.begin(MessageType.REST, sequence).u8(what.code()).finish();
        send(writer.wire(), count, stripNanos);
    }

    /** Starts another frame, or the same one again. */
    void beginFrame() {
        frameSequence = NO_FRAME;
        frameShown = false;
    }

    /** Whether the controller has reported the last frame as shown. */
    boolean isFrameShown() {
        return frameShown;
    }

    /** Time since the last message was sent, in ns. */
    long sinceSent() {
        return clock.getAsLong() - sentAt;
    }

    /**
     * Sends the next part of a frame.
     *
     * @param parts the parts, which are not done
     * @param stripNanos the strip's time for the whole frame
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
     * Waits for bytes and processes the answers in them.
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

    /** Returns the credit of messages whose answer is overdue. */
    void expire() {
        answers.lost(credit.expire(clock.getAsLong()));
    }

    /** Time until the oldest waiting message counts as lost, in ns; one must be waiting. */
    long nanosToDeadline() {
        return credit.oldestDeadline() - clock.getAsLong();
    }

    /** Whether an answer has been overdue for this many ns and none has come, whatever has been sent since. */
    boolean isSilentFor(long nanos) {
        return credit.silentNanos(clock.getAsLong()) > nanos;
    }

    private void next() {
        sequence = (sequence + 1) & 0xFF;
    }

    /** Sends the message with the current sequence number, which keeps the controller busy for an additional time. */
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
