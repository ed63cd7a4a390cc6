package dev.lampwright.shelf;

import java.util.Comparator;
import java.util.Locale;

/** How much a rig needs attention, the most first. */
public enum Standing {
    /** A fault that nobody has acknowledged. */
    FAULT,
    /** A fault that is acknowledged, or over and not reset. */
    ACKNOWLEDGED,
    /** The job is paused. */
    HELD,
    /** The job is done or cancelled, so the bed waits to be cleared. */
    DONE,
    /** The printer heats up or prints. */
    WORKING,
    /** The printer waits for a job. */
    IDLE,
    /** The daemon, its computer or its connection to the broker is gone. */
    LOST,
    /** The printer reports nothing, for example because it is off. */
    SILENT,
    /** The daemon was stopped. */
    ENDED;

    /**
     * Where a rig stands: of several printers, the one that needs a person most counts.
     *
     * @param status what it reports
     * @param old whether it reported too long ago
     */
    static Standing of(RigStatus status, boolean old) {
        if (!status.online()) {
            return status.why().equals("stopped") ? ENDED : LOST;
        }
        if (old) {
            return LOST;
        }
        return status.printers().stream()
                .map(printer -> of(printer.doing()))
                .min(Comparator.naturalOrder())
                .orElseGet(() -> of(status.doing()));
    }

    /**
     * Where a printer stands.
     *
     * @param doing what it does
     */
    static Standing of(RigStatus.Doing doing) {
        return switch (doing.alarm()) {
            case "alert" -> FAULT;
            case "acknowledged", "ringback" -> ACKNOWLEDGED;
            default -> of(doing.state());
        };
    }

    private static Standing of(String state) {
        return switch (state) {
            case "fault" -> FAULT;
            case "held" -> HELD;
            case "done", "stopped" -> DONE;
            case "printing", "warming" -> WORKING;
            case "silent" -> SILENT;
            default -> IDLE;
        };
    }

    /**
     * Whether a person must attend to it before work continues.
     *
     * @return true for faults, pauses, and jobs that are over
     */
    public boolean needsPerson() {
        return compareTo(DONE) <= 0;
    }

    /**
     * Whether the daemon is running.
     *
     * @return false if it was stopped or lost
     */
    public boolean isThere() {
        return this != LOST && this != ENDED;
    }

    /**
     * The word for this, for programs.
     *
     * @return in lower case
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
