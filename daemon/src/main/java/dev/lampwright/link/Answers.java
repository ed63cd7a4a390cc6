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
 * What the controller has answered since {@link #forget}. Manages the credit; callers decide what to do about an answer. Answers to frames
 * allocate nothing.
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
     * Starts without answers.
     *
     * @param credit the messages waiting for an answer
     * @param tally where to count
     * @param shownFrame receives the sequence number of each message whose frame is shown, at once
     */
    Answers(Credit credit, Tally tally, IntConsumer shownFrame) {
        this.credit = credit;
        this.tally = tally;
        this.shownFrame = shownFrame;
    }

    /** What the controller reported about itself. */
    Optional<Here> here() {
        return here;
    }

    /** The set-up that it reported as active. */
    Optional<Setup> inForce() {
        return inForce;
    }

    /** The reason for its last refusal. */
    Optional<String> refusal() {
        return otherVersion.or(() -> refused.map(Refusal::words));
    }

    /** Its last refusal. */
    Optional<Refusal> refused() {
        return refused;
    }

    /** Whether it reported that it has just started, or that it is not set up. */
    boolean unready() {
        return unready;
    }

    /** Whether it has reported its counters. */
    boolean counted() {
        return counted;
    }

    /** Whether it reported that the dark strip alone is over the ceiling. */
    boolean darkOverCeiling() {
        return darkOverCeiling;
    }

    /** Whether a message has been lost or refused since the last call, so that the rest of the current frame is useless. */
    boolean takeFrameSpoilt() {
        boolean spoilt = frameSpoilt;
        frameSpoilt = false;
        return spoilt;
    }

    /** Forgets everything. */
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

    /** Messages will no longer be answered. */
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

    /** Returns the credit of an answered message, and that of older ones, which are lost. */
    private boolean isWaitedFor(Message answer) {
        int older = credit.answered(answer.sequence());
        if (older == Credit.NOT_WAITED_FOR) {
            return false;
        }
        lost(older);
        return true;
    }
}
