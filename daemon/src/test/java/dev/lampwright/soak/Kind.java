package dev.lampwright.soak;

import java.time.Duration;

/** A kind of trouble. */
enum Kind {
    /** The broker is killed and started again; it has forgotten everything. */
    BROKER_KILLED,
    /** The broker stands still, its connections open. */
    BROKER_STILL,
    /** The port is pulled and comes back under the same name. */
    UNPLUGGED,
    /** Bytes are lost, doubled and changed, both ways. */
    CORRUPTED,
    /** The controller is reset. */
    CONTROLLER_RESET,
    /** The controller takes no bytes for a while. */
    CONTROLLER_HANGS,
    /** Thousands of messages at once, much of it nonsense. */
    FLOODED,
    /** Thirty changes of the state a second. The flash limit counts them out before the light follows again. */
    STORMED(Duration.ofSeconds(4)),
    /** Nothing is told until the state is silent. */
    STARVED,
    /** Messages are kept on topics with characters outside the basic multilingual plane, where the daemon listens. */
    STRANGE_TOPICS,
    /** The controller refuses every frame. */
    FRAMES_REFUSED,
    /** The daemon is stopped (SIGSTOP) and goes on (SIGCONT). */
    STOPPED,
    /** The wall clock is set forwards or back by up to years. */
    CLOCK_SET,
    /** The file system with the log and the recording fills up. */
    DISK_FULL,
    /** A good configuration is read. */
    GOOD_CONFIGURATION,
    /** A configuration that is not right is read. */
    BAD_CONFIGURATION,
    /** The configuration is deleted, or a pipe is put in its place, and comes back as another. */
    CONFIGURATION_GONE;

    private final Duration promise;

    /** What the product promises. */
    Kind() {
        this(Duration.ofSeconds(2));
    }

    Kind(Duration promise) {
        this.promise = promise;
    }

    /** How soon after its end the light is to be right again. */
    Duration promise() {
        return promise;
    }
}
