package dev.lampwright.signal;

import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Quantity;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Follows the printer's status and gives each signal's value at any time. Allocates nothing. */
public final class Signals {
    private final Map<Signal, Track> tracks = new EnumMap<>(Signal.class);
    private final List<Source> sources = new ArrayList<>();

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
        bed(new Heater(Quantity.BED_ACTUAL, Quantity.BED_TARGET, room));
        nozzle(new Heater(Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_TARGET, room));
        chamber(new Heater(Quantity.CHAMBER_ACTUAL, Quantity.CHAMBER_TARGET, room));
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

    private void bed(Heater heater) {
        sources.add(heater);
        tracks.put(Signal.BED_HEAT, heater.heat());
        tracks.put(Signal.BED_COOLING, heater.cooling());
        tracks.put(Signal.BED_READY, heater.ready());
        tracks.put(Signal.BED_READY_ERROR, heater.readyError());
        tracks.put(Signal.BED_SPEED, heater.speed());
    }

    private void nozzle(Heater heater) {
        sources.add(heater);
        tracks.put(Signal.NOZZLE_HEAT, heater.heat());
        tracks.put(Signal.NOZZLE_COOLING, heater.cooling());
        tracks.put(Signal.NOZZLE_READY, heater.ready());
        tracks.put(Signal.NOZZLE_READY_ERROR, heater.readyError());
        tracks.put(Signal.NOZZLE_SPEED, heater.speed());
    }

    private void chamber(Heater heater) {
        sources.add(heater);
        tracks.put(Signal.CHAMBER_HEAT, heater.heat());
        tracks.put(Signal.CHAMBER_COOLING, heater.cooling());
        tracks.put(Signal.CHAMBER_READY, heater.ready());
        tracks.put(Signal.CHAMBER_READY_ERROR, heater.readyError());
        tracks.put(Signal.CHAMBER_SPEED, heater.speed());
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
