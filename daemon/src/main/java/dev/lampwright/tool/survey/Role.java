package dev.lampwright.tool.survey;

import dev.lampwright.payload.Quantity;
import dev.lampwright.phrase.Phrase;
import java.util.Locale;
import java.util.Optional;

/** What a value may be to Lampwright. */
public enum Role {
    /** The bed's temperature. */
    BED_ACTUAL(Quantity.BED_ACTUAL),
    /** The target of the bed. */
    BED_SETPOINT(Quantity.BED_SETPOINT),
    /** The nozzle's temperature. */
    NOZZLE_ACTUAL(Quantity.NOZZLE_ACTUAL),
    /** The target of the nozzle. */
    NOZZLE_SETPOINT(Quantity.NOZZLE_SETPOINT),
    /** The chamber's temperature. */
    CHAMBER_ACTUAL(Quantity.CHAMBER_ACTUAL),
    /** The target of the chamber. */
    CHAMBER_SETPOINT(Quantity.CHAMBER_SETPOINT),
    /** Completed share of the job. */
    PROGRESS(Quantity.JOB_PROGRESS),
    /** Time until the job is done. */
    LEFT(Quantity.JOB_LEFT),
    /** Time since the job began. */
    ELAPSED(Quantity.JOB_ELAPSED),
    /** Layers, or whatever else is counted, that are done. */
    DONE(Quantity.JOB_DONE),
    /** The total of layers, or whatever else is counted. */
    TOTAL(Quantity.JOB_TOTAL),
    /** What the printer is doing. */
    STATE(),
    /** What is wrong, in the printer's words. */
    FAULT_TEXT(),
    /** The taking of a picture. */
    CAMERA();

    private final Optional<Quantity> quantity;

    Role(Quantity quantity) {
        this.quantity = Optional.of(quantity);
    }

    Role() {
        this.quantity = Optional.empty();
    }

    /**
     * The quantity that it measures.
     *
     * @return empty for state, fault text and camera
     */
    public Optional<Quantity> quantity() {
        return quantity;
    }

    /**
     * The words for this in a table.
     *
     * @return as in the configuration, such as {@code bed.actual_C}
     */
    public String word() {
        return quantity.map(Quantity::key)
                .orElseGet(() -> this == CAMERA ? "events.camera" : this == STATE ? "state" : "fault_text");
    }

    /** The same for people, with a code. */
    Phrase phrase() {
        return Phrase.of("role_" + name().toLowerCase(Locale.ROOT), word());
    }
}
