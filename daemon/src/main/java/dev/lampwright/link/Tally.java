package dev.lampwright.link;

import java.util.concurrent.atomic.AtomicLong;

/** What the link counts. Written by the link's thread, read by any. */
final class Tally {
    /** Parts of frames that were sent; a whole frame in one packet is one part. */
    final AtomicLong partsSent = new AtomicLong();
    /** Frames of which the last part was sent. */
    final AtomicLong framesSent = new AtomicLong();
    /** Frames that the controller said it shows. */
    final AtomicLong framesShown = new AtomicLong();
    /** Frames among these that the controller said it dimmed to keep the ceiling. */
    final AtomicLong framesDimmed = new AtomicLong();
    /** Messages that were never answered. */
    final AtomicLong messagesLost = new AtomicLong();
    /** Messages that the controller refused. */
    final AtomicLong refused = new AtomicLong();
    /** Broken packets, and messages that make no sense, heard from the controller. */
    final AtomicLong garbled = new AtomicLong();

    private volatile int broken;
    private volatile int overruns;
    private volatile int dimmed;

    /** Takes over the controller's own counters, each modulo 65536. */
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

    /** A number that changes with everything that went wrong on the line. What the controller refused has come through. */
    long mishaps() {
        return messagesLost.get() + garbled.get() + broken + overruns;
    }
}
