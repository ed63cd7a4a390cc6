package dev.lampwright.soak;

import java.time.Duration;

/** A kind of trouble. */
enum Kind {
    /** The broker is killed and restarted; it has forgotten everything. */
    BROKER_KILLED,
    /** The broker stalls, with its connections open. */
    BROKER_STILL,
    /** The port is unplugged and comes back under the same name. */
    UNPLUGGED,
    /** Bytes are lost, doubled and changed, in both directions. */
    CORRUPTED,
    /** The controller is reset. */
    CONTROLLER_RESET,
    /** The controller accepts no bytes for a while. */
    CONTROLLER_HANGS,
    /** Thousands of messages at once, much of it nonsense. */
    FLOODED,
    /** Thirty changes of the state a second. The flash limit counts them out before the light follows again. */
    STORMED(Duration.ofSeconds(4)),
    /** Nothing is reported until the state is silent. */
    STARVED,
    /** Messages are kept on topics with characters outside the basic multilingual plane, where the daemon listens. */
    STRANGE_TOPICS,
    /** The controller refuses every frame. */
    FRAMES_REFUSED,
    /** The daemon is stopped (SIGSTOP) and continues (SIGCONT). */
    STOPPED,
    /** The wall clock is set forwards or back by up to years. */
    CLOCK_SET,
    /** The file system with the log and the recording fills up. */
    DISK_FULL,
    /** A good configuration is read. */
    GOOD_CONFIGURATION,
    /** An invalid configuration is read. */
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

    /** How soon after its end the light must be right again. */
    Duration promise() {
        return promise;
    }
}
