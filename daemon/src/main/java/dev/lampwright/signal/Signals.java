package dev.lampwright.signal;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Follows the printer's status and gives each signal's value at any time. Allocates nothing. */
public final class Signals {
    private final Map<Signal, Track> tracks = new EnumMap<>(Signal.class);
    private final List<SignalSource> sources = new ArrayList<>();

    /**
     * Makes signals that are all unknown.
     *
     * @param ambientC temperature of the room, in °C; what is hot there is as usual
     */
    public Signals(double ambientC) {
        this(Room.at(ambientC));
    }

    /**
     * Makes signals that are all unknown.
     *
     * @param room where the printer stands
     */
    public Signals(Room room) {
        for (Signal signal : Signal.values()) {
            signal.quantity().ifPresent(quantity -> read(signal, quantity));
        }
        heater(
                new Heater(Quantity.BED_ACTUAL, Quantity.BED_TARGET, room),
                Signal.BED_HEAT,
                Signal.BED_COOLING,
                Signal.BED_READY,
                Signal.BED_READY_ERROR,
                Signal.BED_SPEED);
        heater(
                new Heater(Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_TARGET, room),
                Signal.NOZZLE_HEAT,
                Signal.NOZZLE_COOLING,
                Signal.NOZZLE_READY,
                Signal.NOZZLE_READY_ERROR,
                Signal.NOZZLE_SPEED);
        heater(
                new Heater(Quantity.CHAMBER_ACTUAL, Quantity.CHAMBER_TARGET, room),
                Signal.CHAMBER_HEAT,
                Signal.CHAMBER_COOLING,
                Signal.CHAMBER_READY,
                Signal.CHAMBER_READY_ERROR,
                Signal.CHAMBER_SPEED);
        tracks.put(
                Signal.STILL_HOT,
                new Highest(
                        tracks.get(Signal.BED_COOLING),
                        tracks.get(Signal.NOZZLE_COOLING),
                        tracks.get(Signal.CHAMBER_COOLING)));
        job(new Job());
    }

    private void read(Signal signal, Quantity quantity) {
        Glide glide = new Glide();
        tracks.put(signal, glide);
        sources.add(new Read(quantity, glide));
    }

    private void heater(Heater heater, Signal heat, Signal cooling, Signal ready, Signal readyError, Signal speed) {
        sources.add(heater);
        tracks.put(heat, heater.heat());
        tracks.put(cooling, heater.cooling());
        tracks.put(ready, heater.ready());
        tracks.put(readyError, heater.readyError());
        tracks.put(speed, heater.speed());
    }

    private void job(Job job) {
        sources.add(job);
        tracks.put(Signal.JOB_LEFT, job.left());
        tracks.put(Signal.JOB_SPEED, job.speed());
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
        return tracks.get(signal).at(nanos);
    }
}
