package dev.lampwright.signal;

/** A number that light can follow. */
public enum Signal {
    /** How far the bed has got from where this heat-up began to its target, 0 to 1. */
    BED_HEAT("bed.heat"),
    /** The same of the nozzle. */
    NOZZLE_HEAT("nozzle.heat"),
    /** The same of the chamber. */
    CHAMBER_HEAT("chamber.heat"),
    /** Share of the job that is done, 0 to 1. */
    JOB_PROGRESS("job.progress");

    private final String key;

    Signal(String key) {
        this.key = key;
    }

    /**
     * The name of this in the configuration.
     *
     * @return dotted
     */
    public String key() {
        return key;
    }
}
