package dev.lampwright.signal;

import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Reading;
import java.util.List;
import java.util.function.Function;

/**
 * A part of the printer that is heated.
 *
 * @param key the first part of the names of its signals
 * @param actual its temperature in a status, in °C
 * @param target its target, in °C
 */
record Body(String key, Function<PrinterStatus, Reading> actual, Function<PrinterStatus, Reading> target) {
    /** What is printed on. */
    static final Body BED = known("bed", Quantity.BED_ACTUAL, Quantity.BED_SETPOINT);
    /** What is printed with. */
    static final Body NOZZLE = known("nozzle", Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_SETPOINT);
    /** The room around both. */
    static final Body CHAMBER = known("chamber", Quantity.CHAMBER_ACTUAL, Quantity.CHAMBER_SETPOINT);

    /** The built-in ones. */
    static final List<Body> KNOWN = List.of(BED, NOZZLE, CHAMBER);

    private static Body known(String key, Quantity actual, Quantity target) {
        return new Body(key, status -> status.reading(actual), status -> status.reading(target));
    }

    /**
     * One that the user's file names.
     *
     * @param heater what heats it
     * @return a body with the name of the heater
     */
    static Body of(OwnHeater heater) {
        String actual = heater.actualKey();
        String target = heater.setpointKey();
        return new Body(heater.name(), status -> status.own(actual), status -> status.own(target));
    }
}
