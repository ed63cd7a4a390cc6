package dev.lampwright.tool.survey;

/** What a printer does, as far as its readings show. */
public enum Doing {
    /** The heaters are off, and no progress has been made on a job. */
    RESTING("was at rest"),
    /** A heater is on and well below its target. */
    HEATING("heated up"),
    /** The job continues. */
    ADVANCING("went on with the job"),
    /** The heaters are at their targets, and no progress has been made on the job yet. */
    PREPARING("was hot and had done nothing of the job yet"),
    /** The heaters are on and the job makes no progress: a pause or a fault. */
    STANDING("was hot and did not go on with the job"),
    /** The heaters are off, and the job is at its end. */
    FINISHED("was off with the job complete"),
    /** The heaters are off in the middle of a job. */
    OFF("was off in the middle of a job"),
    /** The readings do not show it. */
    UNCLEAR("did something that the readings do not show");

    private final String words;

    Doing(String words) {
        this.words = words;
    }

    /**
     * What the printer did, for the user.
     *
     * @return the rest of a sentence that begins with “the printer”
     */
    public String words() {
        return words;
    }

    /** Whether a job is under way. */
    boolean isWork() {
        return this == HEATING || this == PREPARING || this == ADVANCING || this == STANDING;
    }

    /** Whether the heaters are off. */
    boolean isOff() {
        return this == RESTING || this == FINISHED || this == OFF;
    }
}
