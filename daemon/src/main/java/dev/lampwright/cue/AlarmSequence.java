package dev.lampwright.cue;

/**
 * How a fault is shown until somebody has seen it and it is over. Source: ANSI/ISA-18.1, annunciator sequences A, M and R, and option 4;
 * each starts flashing with the fault, and is steady once acknowledged.
 */
public enum AlarmSequence {
    /** Automatic reset: once acknowledged, it ends with the fault. A fault that passes unseen keeps flashing until acknowledged. */
    A("A"),
    /** Automatic reset without lock-in (option 4): it ends with the fault, seen or not. */
    A_4("A-4"),
    /** Manual reset: once acknowledged, it stays until it is reset after the fault is over. */
    M("M"),
    /** Ringback: once acknowledged, the end of the fault is signalled as well, until it is reset. */
    R("R");

    private final String designation;

    AlarmSequence(String designation) {
        this.designation = designation;
    }

    /**
     * The designation of the standard.
     *
     * @return for example {@code A-4}
     */
    public String designation() {
        return designation;
    }

    /** Whether a fault that passes before it is acknowledged is shown until it is. */
    boolean locksIn() {
        return this != A_4;
    }

    /** The state once the fault is both acknowledged and over. */
    AlarmState afterwards() {
        return switch (this) {
            case A, A_4 -> AlarmState.NORMAL;
            case M -> AlarmState.ACKNOWLEDGED;
            case R -> AlarmState.RINGBACK;
        };
    }
}
