package dev.lampwright.link;

import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import java.util.concurrent.TimeUnit;

/**
 * Sends the newest frame to a controller that is set up, whenever there is credit. One frame is never mixed with another: a newer
 * one is taken up only once the last part of the one before has gone out, or once a part of it is lost.
 */
final class Lighting {
    private static final long SILENT_AFTER = TimeUnit.SECONDS.toNanos(1);
    private static final long LONGEST_WAIT = TimeUnit.MILLISECONDS.toNanos(100);
    /** More than from one frame to the next, so that light that moves wakes nobody more often. */
    private static final long ANSWER_WAIT = TimeUnit.MILLISECONDS.toNanos(20);

    private static final long FLOOD_REST = TimeUnit.MILLISECONDS.toNanos(1);
    private static final long STRIP_RESET_NANOS = TimeUnit.MICROSECONDS.toNanos(300);
    private static final int READS_A_ROUND = 16;

    private final Exchange exchange;
    private final FrameSlot frames;
    private final FrameGate gate;
    private final Answers answers;
    private final FrameParts parts;
    private final long stripNanos;
    private final long frameNanos;
    private final boolean again;
    private boolean begun;

    /**
     * Makes ready for one controller.
     *
     * @param here what it says of itself
     * @param setup what is in force
     * @param again whether the frame that was taken last is to be sent again if no newer one is there
     */
    Lighting(Exchange exchange, FrameSlot frames, FrameGate gate, Here here, Setup setup, boolean again) {
        this.exchange = exchange;
        this.frames = frames;
        this.gate = gate;
        this.again = again;
        answers = exchange.answers();
        frames.deliveries().relit();
        parts = new FrameParts(setup.stripBytes(), setup.dimmers().size(), here.mostPacketBytes());
        stripNanos = (long) setup.longestRun() * setup.channels() * here.byteNanos() + STRIP_RESET_NANOS;
        frameNanos = stripNanos
                + exchange.lineNanos(setup.stripBytes() + 2 * setup.dimmers().size());
    }

    /** What the strip takes for one frame, in ns. */
    long stripNanos() {
        return stripNanos;
    }

    /** What one frame takes on the line and on the strip together, in ns. */
    long frameNanos() {
        return frameNanos;
    }

    /** Whether a frame has been sent, in part at least. */
    boolean begun() {
        return begun;
    }

    /**
     * Does what there is to do and waits for the next thing, for a tenth of a second at most.
     *
     * @throws LineException if the line is gone or the controller has gone silent
     */
    void round() throws LineException {
        drain();
        exchange.expire();
        if (exchange.isSilentFor(SILENT_AFTER)) {
            throw new LineException(
                    "the controller on " + exchange.port() + " has gone silent: check its supply and its cable");
        }
        if (answers.takeFrameSpoilt()) {
            parts.abandon();
        }
        if (!exchange.credit().left()) {
            exchange.receive(exchange.nanosToDeadline());
        } else if (!sendNext()) {
            gate.await(exchange.credit().idle() && !isOwed() ? LONGEST_WAIT : ANSWER_WAIT);
        }
    }

    private void drain() throws LineException {
        int reads = 0;
        while (exchange.receive(0) && reads < READS_A_ROUND) {
            reads++;
        }
        if (reads == READS_A_ROUND) {
            gate.await(FLOOD_REST);
        }
    }

    /** Whether a frame was begun of which the controller has not said that it shows it. */
    private boolean isOwed() {
        return begun && !exchange.isFrameShown();
    }

    /** Whether that will never be said, as every message is answered or given up. It is tried again, as light may stand still from then on. */
    private boolean isLost() {
        return isOwed() && exchange.credit().idle() && exchange.sinceSent() >= ANSWER_WAIT;
    }

    private boolean sendNext() throws LineException {
        if (parts.done() && (frames.fresh() || (again && !begun) || isLost())) {
            parts.begin(frames.take());
            exchange.beginFrame();
            begun = true;
        }
        if (parts.done()) {
            return false;
        }
        exchange.sendPart(parts, stripNanos, frames.takenMadeAt());
        return true;
    }
}
