package dev.lampwright.link;

import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.MalformedMessageException;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.Shown;
import dev.lampwright.protocol.Version;
import dev.lampwright.protocol.WhenSilent;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * Messages out and answers in over one line, with credit kept. It says what has been heard; what to do about it is for others. For
 * the link's thread only. Frames and their answers allocate nothing.
 */
final class Exchange implements MessageReader.Handler {
    /** What a message may take beyond its time on the line and the strip's. */
    private static final long MARGIN_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

    /** Start bit, eight data bits and stop bit. */
    private static final long BYTE_NANOS_AT_ONE_BAUD = TimeUnit.SECONDS.toNanos(10);

    private static final int LARGEST_ANSWER = 2048;
    private static final int ORDINARY_ANSWER = 32;
    private static final byte[] ZERO = {0};

    private final Line line;
    private final LongSupplier clock;
    private final Tally tally;
    private final Credit credit = new Credit();
    private final MessageReader reader = new MessageReader(LARGEST_ANSWER);
    private final MessageWriter writer = new MessageWriter(Setup.LARGEST_BODY);
    private final byte[] received = new byte[512];

    private int sequence;
    private long lineFree;
    private long controllerFree;
    private boolean owed;
    private long owedSince;

    private Optional<Here> here = Optional.empty();
    private Optional<Setup> inForce = Optional.empty();
    private Optional<String> refusal = Optional.empty();
    private boolean unready;
    private boolean frameSpoilt;
    private boolean darkOverCeiling;

    Exchange(Line line, LongSupplier clock, Tally tally) {
        this.line = line;
        this.clock = clock;
        this.tally = tally;
    }

    /** Forgets all that was heard, and ends whatever stood on the line before. One message may be unanswered. */
    void restart() throws LineException {
        reader.restart();
        forget();
        credit.restart(1);
        line.write(ZERO, ZERO.length);
    }

    /** Lets as many messages be unanswered as the controller allows. */
    void allow(int credits) {
        credit.restart(credits);
    }

    /** Asks who is there. */
    void sendHello() throws LineException {
        int sequenceUsed = nextSequence();
        int count =
                writer.begin(MessageType.HELLO, sequenceUsed).u8(Version.SPOKEN).finish();
        send(writer.wire(), count, sequenceUsed, 0);
    }

    /** Says what is fitted. */
    void sendSetup(Setup setup) throws LineException {
        int sequenceUsed = nextSequence();
        int count = setup.write(writer, MessageType.SETUP, sequenceUsed);
        send(writer.wire(), count, sequenceUsed, lineNanos(count));
    }

    /** Says goodbye. */
    void sendRest(WhenSilent what, long stripNanos) throws LineException {
        int sequenceUsed = nextSequence();
        int count = writer.begin(MessageType.REST, sequenceUsed).u8(what.code()).finish();
        send(writer.wire(), count, sequenceUsed, stripNanos);
    }

    /**
     * Sends the next part of a frame.
     *
     * @param parts one that is not done
     * @param stripNanos what the strip takes for the whole frame
     */
    void sendPart(FrameParts parts, long stripNanos) throws LineException {
        int sequenceUsed = nextSequence();
        int count = parts.next(sequenceUsed);
        send(parts.wire(), count, sequenceUsed, parts.done() ? stripNanos : 0);
        if (parts.done()) {
            tally.framesSent.incrementAndGet();
        }
    }

    /**
     * Waits for bytes and deals with them.
     *
     * @param nanos how long to wait for the first; 0 or less does not wait
     * @return whether there may be more to read at once
     */
    boolean receive(long nanos) throws LineException {
        int millis = (int) Math.max(0, TimeUnit.NANOSECONDS.toMillis(nanos + TimeUnit.MILLISECONDS.toNanos(1) - 1));
        int count = line.read(received, millis);
        reader.accept(received, 0, count, this);
        return count == received.length;
    }

    /** Gives back the credit of messages that are overdue. */
    void expire() {
        noteLost(credit.expire(clock.getAsLong()));
    }

    /** How long until the oldest message that waits counts as lost, in ns; one must be waiting. */
    long nanosToDeadline() {
        return credit.oldestDeadline() - clock.getAsLong();
    }

    /** The messages that wait for an answer. */
    Credit credit() {
        return credit;
    }

    /** How long messages have gone out without any answer, in ns; 0 if the last was answered. */
    long silentNanos() {
        return owed ? clock.getAsLong() - owedSince : 0;
    }

    /** What the controller said of itself, if it has since {@link #forget}. */
    Optional<Here> here() {
        return here;
    }

    /** The set-up that the controller said is in force, if it has since {@link #forget}. */
    Optional<Setup> inForce() {
        return inForce;
    }

    /** Why the controller refused the last message that was no frame, if it has since {@link #forget}. */
    Optional<String> refusal() {
        return refusal;
    }

    /** Whether the controller has said since {@link #forget} that it has just started, or is not set up. */
    boolean unready() {
        return unready;
    }

    /** Whether the controller has said since {@link #forget} that the dark strip alone is over the ceiling. */
    boolean darkOverCeiling() {
        return darkOverCeiling;
    }

    /** Whether a part of the frame under way was lost or refused since this was last asked, so that the rest is of no use. */
    boolean takeFrameSpoilt() {
        boolean spoilt = frameSpoilt;
        frameSpoilt = false;
        return spoilt;
    }

    /** Forgets what was heard. */
    void forget() {
        here = Optional.empty();
        inForce = Optional.empty();
        refusal = Optional.empty();
        unready = false;
        frameSpoilt = false;
        darkOverCeiling = false;
        owed = false;
    }

    @Override
    public void message(Message message) {
        try {
            take(message);
        } catch (MalformedMessageException e) {
            tally.garbled.incrementAndGet();
        }
    }

    @Override
    public void broken(int bytes) {
        tally.garbled.incrementAndGet();
    }

    private void take(Message message) throws MalformedMessageException {
        boolean waitedFor = message.type() != MessageType.COMPLAINT && noteAnswer(message.sequence());
        switch (message.type()) {
            case HERE -> takeHere(message, waitedFor);
            case IN_FORCE -> {
                if (waitedFor) {
                    inForce = Optional.of(Setup.read(message));
                }
            }
            case SHOWN -> {
                if (waitedFor) {
                    takeShown(message);
                }
            }
            case COMPLAINT -> takeComplaint(message);
            default -> tally.garbled.incrementAndGet();
        }
    }

    private void takeHere(Message message, boolean waitedFor) throws MalformedMessageException {
        boolean unasked = !waitedFor && message.sequence() == 0;
        if (!waitedFor && !unasked) {
            return;
        }
        unready |= unasked;
        int version = message.u8(0);
        if (version == Version.SPOKEN) {
            here = Optional.of(Here.read(message));
        } else {
            refusal = Optional.of(otherVersion(version));
        }
    }

    private void takeShown(Message message) throws MalformedMessageException {
        Shown shown = Shown.read(message);
        if (shown == Shown.WHOLE || shown == Shown.DIMMED) {
            tally.framesShown.incrementAndGet();
        }
        tally.controllerCounts(
                message.u16(Shown.BROKEN_AT), message.u16(Shown.OVERRUNS_AT), message.u16(Shown.DIMMED_AT));
    }

    private void takeComplaint(Message message) throws MalformedMessageException {
        Complaint complaint = Complaint.of(message.u8(0));
        int detail = message.u16(1);
        if (complaint == Complaint.CEILING_BELOW_DARK) {
            darkOverCeiling = true;
        }
        if (!complaint.isAnswer() || !noteAnswer(message.sequence())) {
            return;
        }
        tally.refused.incrementAndGet();
        frameSpoilt = true;
        unready |= complaint == Complaint.NOT_SET_UP;
        refusal = Optional.of(
                complaint == Complaint.VERSION
                        ? otherVersion(detail)
                        : "the controller refused " + complaint.words() + " (detail " + detail + ")");
    }

    private static String otherVersion(int version) {
        return "the controller speaks version " + version + " of the wire, and lampwright version " + Version.SPOKEN
                + ": put firmware on it that speaks version " + Version.SPOKEN;
    }

    private boolean noteAnswer(int sequenceAnswered) {
        int older = credit.answered(sequenceAnswered);
        if (older == Credit.NOT_WAITED_FOR) {
            return false;
        }
        noteLost(older);
        owed = false;
        return true;
    }

    private void noteLost(int count) {
        if (count > 0) {
            tally.messagesLost.addAndGet(count);
            frameSpoilt = true;
        }
    }

    private int nextSequence() {
        sequence = (sequence + 1) & 0xFF;
        return sequence;
    }

    private void send(byte[] wire, int count, int sequenceUsed, long workNanos) throws LineException {
        line.write(wire, count);
        long now = clock.getAsLong();
        long from = credit.idle() ? now : later(now, lineFree);
        lineFree = from + lineNanos(count);
        controllerFree = (credit.idle() ? lineFree : later(lineFree, controllerFree)) + workNanos;
        credit.spend(sequenceUsed, controllerFree + lineNanos(ORDINARY_ANSWER) + MARGIN_NANOS);
        if (!owed) {
            owed = true;
            owedSince = now;
        }
    }

    private long lineNanos(int bytes) {
        return bytes * BYTE_NANOS_AT_ONE_BAUD / line.baud();
    }

    private static long later(long one, long other) {
        return one - other > 0 ? one : other;
    }
}
