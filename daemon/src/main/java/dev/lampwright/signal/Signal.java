package dev.lampwright.signal;

import dev.lampwright.payload.Quantity;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A number that light can follow. Each is known by the name that the configuration has for it. */
public enum Signal {
    /** How far the bed has got from where this heat-up began to its target, 0 to 1. */
    BED_HEAT("bed.heat"),
    /** The same of the nozzle. */
    NOZZLE_HEAT("nozzle.heat"),
    /** The same of the chamber. */
    CHAMBER_HEAT("chamber.heat"),
    /** How hot the bed still is while it is not heated, from 1 where it was hottest to 0 where it may be touched. */
    BED_COOLING("bed.cooling"),
    /** The same of the nozzle. */
    NOZZLE_COOLING("nozzle.cooling"),
    /** The same of the chamber. */
    CHAMBER_COOLING("chamber.cooling"),
    /** The most of these three. */
    STILL_HOT("still_hot"),
    /** Time until the bed is ready, in s. */
    BED_READY("bed.ready_s", false),
    /** The same of the nozzle. */
    NOZZLE_READY("nozzle.ready_s", false),
    /** The same of the chamber. */
    CHAMBER_READY("chamber.ready_s", false),
    /** How far off the time until the bed is ready may be, in s. */
    BED_READY_ERROR("bed.ready_error_s", false),
    /** The same of the nozzle. */
    NOZZLE_READY_ERROR("nozzle.ready_error_s", false),
    /** The same of the chamber. */
    CHAMBER_READY_ERROR("chamber.ready_error_s", false),
    /** How fast the bed gets hotter, in K/s; below 0 while it cools. */
    BED_SPEED("bed.speed_K_per_s", false),
    /** The same of the nozzle. */
    NOZZLE_SPEED("nozzle.speed_K_per_s", false),
    /** The same of the chamber. */
    CHAMBER_SPEED("chamber.speed_K_per_s", false),
    /** How fast the job goes on, as share of it per hour. */
    JOB_SPEED("job.speed_per_h", false),
    /** Share of the job that is done, 0 to 1. */
    JOB_PROGRESS(Quantity.JOB_PROGRESS),
    /** Time until the job is done, in s. */
    JOB_LEFT("job.left_s", false),
    /** Temperature of the bed, in °C. */
    BED_ACTUAL(Quantity.BED_ACTUAL),
    /** Temperature that the bed is to reach, in °C. */
    BED_TARGET(Quantity.BED_TARGET),
    /** Temperature of the nozzle, in °C. */
    NOZZLE_ACTUAL(Quantity.NOZZLE_ACTUAL),
    /** Temperature that the nozzle is to reach, in °C. */
    NOZZLE_TARGET(Quantity.NOZZLE_TARGET),
    /** Temperature of the chamber, in °C. */
    CHAMBER_ACTUAL(Quantity.CHAMBER_ACTUAL),
    /** Temperature that the chamber is to reach, in °C. */
    CHAMBER_TARGET(Quantity.CHAMBER_TARGET);

    private final String key;
    private final Optional<Quantity> quantity;
    private final boolean isShare;

    Signal(String key) {
        this(key, true);
    }

    Signal(String key, boolean isShare) {
        this.key = key;
        quantity = Optional.empty();
        this.isShare = isShare;
    }

    Signal(Quantity quantity) {
        key = quantity.key();
        this.quantity = Optional.of(quantity);
        isShare = quantity == Quantity.JOB_PROGRESS;
    }

    /**
     * The name of this in the configuration.
     *
     * @return dotted
     */
    public String key() {
        return key;
    }

    /**
     * The quantity that this follows as it is read.
     *
     * @return empty if the signal is reckoned from several
     */
    public Optional<Quantity> quantity() {
        return quantity;
    }

    /**
     * Whether this runs from 0 to 1 by itself, so that it needs no bounds to be followed.
     *
     * @return false for temperatures, times and speeds
     */
    public boolean isShare() {
        return isShare;
    }

    /**
     * The signal of a name.
     *
     * @param key as in {@link #key}
     * @return the signal, empty if there is none of that name
     */
    public static Optional<Signal> named(String key) {
        return Arrays.stream(values()).filter(signal -> signal.key.equals(key)).findFirst();
    }

    /**
     * The names of all.
     *
     * @return as in {@link #key}
     */
    public static List<String> keys() {
        return Arrays.stream(values()).map(Signal::key).toList();
    }
}
