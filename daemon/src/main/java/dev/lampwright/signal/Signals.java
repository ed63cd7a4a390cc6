package dev.lampwright.signal;

import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Quantity;
import dev.lampwright.printer.Reading;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Follows the printer's status and gives each signal's value at any time. Allocates nothing once every signal has been heard. */
public final class Signals {
    private final Map<Signal, Glide> glides = new EnumMap<>(Signal.class);
    private final List<Heater> heaters;
    private Reading progress = Reading.UNKNOWN;

    /**
     * Makes signals that are all unknown.
     *
     * @param ambientC temperature of the room, in °C
     */
    public Signals(double ambientC) {
        for (Signal signal : Signal.values()) {
            glides.put(signal, new Glide());
        }
        heaters = List.of(
                new Heater(Quantity.BED_ACTUAL, Quantity.BED_TARGET, Signal.BED_HEAT, ambientC),
                new Heater(Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_TARGET, Signal.NOZZLE_HEAT, ambientC),
                new Heater(Quantity.CHAMBER_ACTUAL, Quantity.CHAMBER_TARGET, Signal.CHAMBER_HEAT, ambientC));
    }

    /**
     * Takes what is new in a status; the same status again changes nothing.
     *
     * @param status the latest
     */
    public void follow(PrinterStatus status) {
        for (int i = 0; i < heaters.size(); i++) {
            heaters.get(i).follow(status);
        }
        Reading newest = status.reading(Quantity.JOB_PROGRESS);
        if (!newest.equals(progress)) {
            progress = newest;
            glide(Signal.JOB_PROGRESS).to(newest.value(), newest.atNanos());
        }
    }

    /**
     * The value of a signal.
     *
     * @param signal which
     * @param nanos when, no earlier than the last status came
     * @return 0 to 1, NaN if it is unknown
     */
    public double value(Signal signal, long nanos) {
        return glide(signal).at(nanos);
    }

    private Glide glide(Signal signal) {
        return glides.get(signal);
    }

    /** One heated part: two readings make one signal. */
    private final class Heater {
        private final Quantity actualQuantity;
        private final Quantity targetQuantity;
        private final Signal signal;
        private final HeatUp heatUp;
        private Reading actual = Reading.UNKNOWN;
        private Reading target = Reading.UNKNOWN;

        Heater(Quantity actualQuantity, Quantity targetQuantity, Signal signal, double ambientC) {
            this.actualQuantity = actualQuantity;
            this.targetQuantity = targetQuantity;
            this.signal = signal;
            heatUp = new HeatUp(ambientC);
        }

        void follow(PrinterStatus status) {
            Reading newActual = status.reading(actualQuantity);
            Reading newTarget = status.reading(targetQuantity);
            if (!newActual.equals(actual) || !newTarget.equals(target)) {
                actual = newActual;
                target = newTarget;
                long atNanos = Math.max(newActual.atNanos(), newTarget.atNanos());
                glide(signal).to(heatUp.share(newActual.value(), newTarget.value()), atNanos);
            }
        }
    }
}
