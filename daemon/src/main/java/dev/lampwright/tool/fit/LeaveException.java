package dev.lampwright.tool.fit;

/** The user leaves a question without answering it. */
final class LeaveException extends Exception {
    private static final long serialVersionUID = 1L;

    private final Way way;

    /** The target. */
    enum Way {
        /** To the question before. */
        BACK,
        /** Out, for now. */
        STOP,
        /** There will be no more answers. */
        INPUT_ENDED
    }

    LeaveException(Way way) {
        super(way.toString());
        this.way = way;
    }

    Way way() {
        return way;
    }
}
