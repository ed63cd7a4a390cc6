package dev.lampwright.link;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import java.util.concurrent.TimeUnit;

/**
 * Sends the newest frame to a controller that is set up, whenever there is credit. Frames are never mixed: a newer one is started only
 * after the last part of the previous one has been sent, or a part of it is lost.
 */
final class Lighting {
    private static final long SILENT_AFTER = TimeUnit.SECONDS.toNanos(1);
    private static final long LONGEST_WAIT = TimeUnit.MILLISECONDS.toNanos(100);
    /** Longer than a frame interval, so that moving light causes no extra wake-ups. */
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
     * Prepares for one controller.
     *
     * @param here what it reports about itself
     * @param setup the active set-up
     * @param again whether to send the last taken frame again if there is no newer one
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

    /** The strip's time for one frame, in ns. */
    long stripNanos() {
        return stripNanos;
    }

    /** The time of one frame on the line and on the strip together, in ns. */
    long frameNanos() {
        return frameNanos;
    }

    /** Whether a frame has been sent, at least in part. */
    boolean begun() {
        return begun;
    }

    /**
     * Does the pending work and waits for the next event, for a tenth of a second at most.
     *
     * @throws LineException if the line is lost or the controller has gone silent
     */
    void round() throws LineException {
        drain();
        exchange.expire();
        if (exchange.isSilentFor(SILENT_AFTER)) {
            throw new LineException(Phrase.of(
                    "gone_silent",
                    "the controller on " + exchange.port() + " has gone silent: check its supply and its cable",
                    "port",
                    exchange.port()));
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

    /** Whether a frame was started that the controller has not reported as shown. */
    private boolean isOwed() {
        return begun && !exchange.isFrameShown();
    }

    /**
     * Whether that report will never come, because every message has been answered or given up. The frame is sent again, because the light
     * may not change after it.
     */
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
