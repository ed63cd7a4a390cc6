package dev.lampwright.cue;

/**
 * How a fault is shown until somebody has seen it and it is over. Source: ANSI/ISA-18.1, annunciator sequences A, M and R, and option 4;
 * each begins to flash with the fault, and stands steady once acknowledged.
 */
public enum AlarmSequence {
    /** Automatic reset: once acknowledged, it goes with the fault. A fault that passes unseen flashes on until acknowledged. */
    A("A"),
    /** Automatic reset without lock-in (option 4): it goes with the fault, seen or not. */
    A_4("A-4"),
    /** Manual reset: once acknowledged, it stands until it is reset after the fault is over. */
    M("M"),
    /** Ringback: once acknowledged, the end of the fault is told in its turn, until it is reset. */
    R("R");

    private final String designation;

    AlarmSequence(String designation) {
        this.designation = designation;
    }

    /**
     * The designation of the standard.
     *
     * @return for instance {@code A-4}
     */
    public String designation() {
        return designation;
    }

    /** Whether a fault that passes before it is acknowledged is shown until it is. */
    boolean locksIn() {
        return this != A_4;
    }

    /** What comes once the fault is both acknowledged and over. */
    AlarmState afterwards() {
        return switch (this) {
            case A, A_4 -> AlarmState.NORMAL;
            case M -> AlarmState.ACKNOWLEDGED;
            case R -> AlarmState.RINGBACK;
        };
    }
}
