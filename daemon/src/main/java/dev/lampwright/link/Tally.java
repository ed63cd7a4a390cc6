package dev.lampwright.link;

import java.util.concurrent.atomic.AtomicLong;

/** What the link counts. Written by the link's thread, read by any. */
final class Tally {
    /** Parts of frames sent; a whole frame in one packet is one part. */
    final AtomicLong partsSent = new AtomicLong();
    /** Frames whose last part was sent. */
    final AtomicLong framesSent = new AtomicLong();
    /** Frames that the controller reported as shown. */
    final AtomicLong framesShown = new AtomicLong();
    /** Frames among these that the controller reported as dimmed to keep the ceiling. */
    final AtomicLong framesDimmed = new AtomicLong();
    /** Messages that were never answered. */
    final AtomicLong messagesLost = new AtomicLong();
    /** Messages that the controller refused. */
    final AtomicLong refused = new AtomicLong();
    /** Broken packets and malformed messages received from the controller. */
    final AtomicLong garbled = new AtomicLong();

    private volatile int broken;
    private volatile int overruns;
    private volatile int dimmed;

    /** Copies the controller's own counters, each modulo 65536. */
    void controllerCounts(int newBroken, int newOverruns, int newDimmed) {
        broken = newBroken;
        overruns = newOverruns;
        dimmed = newDimmed;
    }

    /** The controller's count of broken packets, modulo 65536. */
    int broken() {
        return broken;
    }

    /** The controller's count of overruns, modulo 65536. */
    int overruns() {
        return overruns;
    }

    /** The controller's count of frames dimmed to keep the ceiling, modulo 65536. */
    int dimmed() {
        return dimmed;
    }

    /** A number that changes with every error on the line. Refused messages do not count, because they got through. */
    long mishaps() {
        return messagesLost.get() + garbled.get() + broken + overruns;
    }
}
