package dev.lampwright.payload;

/** What can be read from a printer. The unit is part of the name. */
public enum Quantity {
    /** Temperature of the bed, in °C. */
    BED_ACTUAL("bed.actual_C"),
    /** Target temperature of the bed, in °C; 0 is off. */
    BED_SETPOINT("bed.setpoint_C"),
    /** Temperature of the nozzle, in °C. */
    NOZZLE_ACTUAL("nozzle.actual_C"),
    /** Target temperature of the nozzle, in °C; 0 is off. */
    NOZZLE_SETPOINT("nozzle.setpoint_C"),
    /** Temperature of the chamber, in °C. */
    CHAMBER_ACTUAL("chamber.actual_C"),
    /** Target temperature of the chamber, in °C; 0 is off. */
    CHAMBER_SETPOINT("chamber.setpoint_C"),
    /** Completed share of the job, 0 to 1. */
    JOB_PROGRESS("job.progress"),
    /** Time until the job is done, in s. */
    JOB_LEFT("job.left_s"),
    /** Time since the job began, in s. */
    JOB_ELAPSED("job.elapsed_s"),
    /** How much of the job is done, in the unit that is counted: layers, lines, bytes. */
    JOB_DONE("job.done"),
    /** The total amount, counted like {@link #JOB_DONE}. */
    JOB_TOTAL("job.total");

    private final String key;

    Quantity(String key) {
        this.key = key;
    }

    /**
     * Whether this is what a heater is set to.
     *
     * @return true for the three setpoints
     */
    public boolean isSetpoint() {
        return this == BED_SETPOINT || this == NOZZLE_SETPOINT || this == CHAMBER_SETPOINT;
    }

    /**
     * The name of this in the configuration.
     *
     * @return dotted, with its unit
     */
    public String key() {
        return key;
    }
}
