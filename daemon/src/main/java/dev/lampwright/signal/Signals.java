package dev.lampwright.signal;

import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Quantity;
import dev.lampwright.printer.Reading;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Follows the printer's status and gives each signal's value at any time. Allocates nothing. */
public final class Signals {
    private final Map<Signal, Glide> glides = new EnumMap<>(Signal.class);
    private final List<Source> sources = new ArrayList<>();

    /**
     * Makes signals that are all unknown.
     *
     * @param ambientC temperature of the room, in °C
     */
    public Signals(double ambientC) {
        for (Signal signal : Signal.values()) {
            Glide glide = new Glide();
            glides.put(signal, glide);
            signal.quantity().ifPresent(quantity -> sources.add(new Read(quantity, glide)));
        }
        heater(Signal.BED_HEAT, Quantity.BED_ACTUAL, Quantity.BED_TARGET, ambientC);
        heater(Signal.NOZZLE_HEAT, Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_TARGET, ambientC);
        heater(Signal.CHAMBER_HEAT, Quantity.CHAMBER_ACTUAL, Quantity.CHAMBER_TARGET, ambientC);
    }

    /**
     * Takes what is new in a status; the same status again changes nothing.
     *
     * @param status the latest
     */
    public void follow(PrinterStatus status) {
        for (int i = 0; i < sources.size(); i++) {
            sources.get(i).follow(status);
        }
    }

    /**
     * The value of a signal.
     *
     * @param signal which
     * @param nanos when, no earlier than the last status came
     * @return the value, NaN if it is unknown
     */
    public double value(Signal signal, long nanos) {
        return glides.get(signal).at(nanos);
    }

    private void heater(Signal signal, Quantity actual, Quantity target, double ambientC) {
        sources.add(new Heater(actual, target, new HeatUp(ambientC), glides.get(signal)));
    }

    /** What makes one signal move. */
    private interface Source {
        void follow(PrinterStatus status);
    }

    /** A reading followed as it is. */
    private static final class Read implements Source {
        private final Quantity quantity;
        private final Glide glide;
        private Reading last = Reading.UNKNOWN;

        Read(Quantity quantity, Glide glide) {
            this.quantity = quantity;
            this.glide = glide;
        }

        @Override
        public void follow(PrinterStatus status) {
            Reading newest = status.reading(quantity);
            if (newest.differsFrom(last)) {
                last = newest;
                glide.to(newest.value(), newest.atNanos());
            }
        }
    }

    /** One heated part: two readings make one signal. */
    private static final class Heater implements Source {
        private final Quantity actualQuantity;
        private final Quantity targetQuantity;
        private final HeatUp heatUp;
        private final Glide glide;
        private Reading actual = Reading.UNKNOWN;
        private Reading target = Reading.UNKNOWN;

        Heater(Quantity actualQuantity, Quantity targetQuantity, HeatUp heatUp, Glide glide) {
            this.actualQuantity = actualQuantity;
            this.targetQuantity = targetQuantity;
            this.heatUp = heatUp;
            this.glide = glide;
        }

        @Override
        public void follow(PrinterStatus status) {
            Reading newActual = status.reading(actualQuantity);
            Reading newTarget = status.reading(targetQuantity);
            if (newActual.differsFrom(actual) || newTarget.differsFrom(target)) {
                actual = newActual;
                target = newTarget;
                long atNanos = Math.max(newActual.atNanos(), newTarget.atNanos());
                glide.to(heatUp.share(newActual.value(), newTarget.value()), atNanos);
            }
        }
    }
}
