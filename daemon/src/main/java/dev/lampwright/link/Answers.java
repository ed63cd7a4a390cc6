package dev.lampwright.link;

import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.MalformedMessageException;
import dev.lampwright.protocol.Message;
import dev.lampwright.protocol.MessageReader;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.Shown;
import java.util.Optional;
import java.util.function.IntConsumer;

/**
 * What the controller has said since {@link #forget}. It keeps the credit; what to do about an answer is for others. The answers to
 * frames allocate nothing.
 */
final class Answers implements MessageReader.Handler {
    private final Credit credit;
    private final Tally tally;
    private final IntConsumer shownFrame;

    private Optional<Here> here = Optional.empty();
    private Optional<Setup> inForce = Optional.empty();
    private Optional<String> otherVersion = Optional.empty();
    private Optional<Refusal> refused = Optional.empty();
    private boolean unready;
    private boolean counted;
    private boolean frameSpoilt;
    private boolean darkOverCeiling;

    /**
     * Makes answers that have not come.
     *
     * @param credit the messages that wait
     * @param tally where to count
     * @param shownFrame told the sequence number of each message whose frame is shown, at once
     */
    Answers(Credit credit, Tally tally, IntConsumer shownFrame) {
        this.credit = credit;
        this.tally = tally;
        this.shownFrame = shownFrame;
    }

    /** What the controller said of itself. */
    Optional<Here> here() {
        return here;
    }

    /** The set-up that it said is in force. */
    Optional<Setup> inForce() {
        return inForce;
    }

    /** Why it refused the last message that it refused. */
    Optional<String> refusal() {
        return otherVersion.or(() -> refused.map(Refusal::words));
    }

    /** The last message that it refused, and how. */
    Optional<Refusal> refused() {
        return refused;
    }

    /** Whether it said that it has just started, or that it is not set up. */
    boolean unready() {
        return unready;
    }

    /** Whether it has told its counters. */
    boolean counted() {
        return counted;
    }

    /** Whether it said that the dark strip alone is over the ceiling. */
    boolean darkOverCeiling() {
        return darkOverCeiling;
    }

    /** Whether a message was lost or refused since this was last asked, so that the rest of a frame under way is of no use. */
    boolean takeFrameSpoilt() {
        boolean spoilt = frameSpoilt;
        frameSpoilt = false;
        return spoilt;
    }

    /** Forgets all of it. */
    void forget() {
        here = Optional.empty();
        inForce = Optional.empty();
        otherVersion = Optional.empty();
        refused = Optional.empty();
        unready = false;
        counted = false;
        frameSpoilt = false;
        darkOverCeiling = false;
    }

    /** Messages will not be answered any more. */
    void lost(int count) {
        if (count > 0) {
            tally.messagesLost.addAndGet(count);
            frameSpoilt = true;
        }
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
        switch (message.type()) {
            case HERE -> takeHere(message);
            case IN_FORCE -> takeInForce(message);
            case SHOWN -> takeShown(message);
            case COMPLAINT -> takeComplaint(message);
            default -> tally.garbled.incrementAndGet();
        }
    }

    private void takeHere(Message message) throws MalformedMessageException {
        boolean waitedFor = isWaitedFor(message);
        boolean unasked = !waitedFor && message.sequence() == 0;
        unready |= unasked;
        if (!waitedFor && !unasked) {
            return;
        }
        int version = message.u8(0);
        if (version == Message.WIRE_VERSION) {
            here = Optional.of(Here.read(message));
        } else {
            otherVersion = Optional.of(Refusal.otherVersion(version));
        }
    }

    private void takeInForce(Message message) throws MalformedMessageException {
        if (isWaitedFor(message)) {
            inForce = Optional.of(Setup.read(message));
        }
    }

    private void takeShown(Message message) throws MalformedMessageException {
        boolean waitedFor = isWaitedFor(message);
        Shown shown = Shown.read(message);
        boolean whole = shown == Shown.WHOLE || shown == Shown.DIMMED;
        if (whole) {
            shownFrame.accept(message.sequence());
        }
        if (!waitedFor) {
            return;
        }
        if (whole) {
            tally.framesShown.incrementAndGet();
        }
        if (shown == Shown.DIMMED) {
            tally.framesDimmed.incrementAndGet();
        }
        tally.controllerCounts(
                message.u16(Shown.BROKEN_AT), message.u16(Shown.OVERRUNS_AT), message.u16(Shown.DIMMED_AT));
        counted = true;
    }

    private void takeComplaint(Message message) throws MalformedMessageException {
        int code = message.u8(0);
        Complaint complaint = Complaint.of(code);
        int detail = message.u16(1);
        darkOverCeiling |= complaint == Complaint.CEILING_BELOW_DARK;
        if (!complaint.isAnswer() || !isWaitedFor(message)) {
            return;
        }
        tally.refused.incrementAndGet();
        frameSpoilt = true;
        unready |= complaint == Complaint.NOT_SET_UP;
        refused = Optional.of(new Refusal(complaint, code, detail));
    }

    /** Gives the credit of an answered message back, and that of older ones, which are lost. */
    private boolean isWaitedFor(Message answer) {
        int older = credit.answered(answer.sequence());
        if (older == Credit.NOT_WAITED_FOR) {
            return false;
        }
        lost(older);
        return true;
    }
}
