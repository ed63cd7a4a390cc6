package dev.lampwright.signal;

import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A number that light can follow, known by its name in the configuration. The built-in ones are in {@link #table}: a line there adds a
 * signal; those of heated bodies are declared in {@link OfBody}. User-defined signals follow them ({@link #ofOwn}).
 */
public final class Signal {
    private static final boolean SHARE = true;
    private static final boolean NO_SHARE = false;
    private static final List<Signal> ALL = table();

    /** Completed share of the job, 0 to 1. */
    public static final Signal JOB_PROGRESS = of(Quantity.JOB_PROGRESS);

    private final int index;
    private final String key;
    private final double low;
    private final double high;
    private final Optional<Quantity> quantity;
    private final Function<Sources, Track> track;

    private Signal(
            int index,
            String key,
            double low,
            double high,
            Optional<Quantity> quantity,
            Function<Sources, Track> track) {
        this.index = index;
        this.key = key;
        this.low = low;
        this.high = high;
        this.quantity = quantity;
        this.track = track;
    }

    private static List<Signal> table() {
        Table table = new Table(0);
        table.ofKnownBodies(OfBody.HEAT);
        table.ofKnownBodies(OfBody.COOLING);
        // The highest of these, user-defined heaters included.
        table.add("still_hot", SHARE, Sources::stillHot);
        table.ofKnownBodies(OfBody.READY);
        table.ofKnownBodies(OfBody.READY_ERROR);
        table.ofKnownBodies(OfBody.SPEED);
        // The pace of the job, as share of it per hour.
        table.add("job.speed_per_h", NO_SHARE, sources -> sources.job().speed());
        table.asRead(Quantity.JOB_PROGRESS, SHARE);
        // Time until the job is done: as reported by the printer, or else derived from its progress.
        table.add("job.left_s", NO_SHARE, sources -> sources.job().left());
        table.asRead(Quantity.BED_ACTUAL, NO_SHARE);
        table.asRead(Quantity.BED_SETPOINT, NO_SHARE);
        table.asRead(Quantity.NOZZLE_ACTUAL, NO_SHARE);
        table.asRead(Quantity.NOZZLE_SETPOINT, NO_SHARE);
        table.asRead(Quantity.CHAMBER_ACTUAL, NO_SHARE);
        table.asRead(Quantity.CHAMBER_SETPOINT, NO_SHARE);
        return List.copyOf(table.signals);
    }

    /**
     * Signals derived from the readings of each heated body, built-in or user-defined.
     *
     * @param measure the last part of the signal's name
     * @param isShare whether it runs from 0 to 1
     * @param track its value over time
     */
    private record OfBody(String measure, boolean isShare, Function<Heater, Track> track) {
        /** How far this heat-up has got from its beginning to its target. */
        static final OfBody HEAT = new OfBody("heat", SHARE, Heater::heat);
        /** How hot it still is while it is not heated, from 1 at its hottest to 0 when it may be touched. */
        static final OfBody COOLING = new OfBody("cooling", SHARE, Heater::cooling);
        /** Time until it is ready. */
        static final OfBody READY = new OfBody("ready_s", NO_SHARE, Heater::ready);
        /** The standard error of that time. */
        static final OfBody READY_ERROR = new OfBody("ready_error_s", NO_SHARE, Heater::readyError);
        /** How fast it heats up; below 0 while it cools. */
        static final OfBody SPEED = new OfBody("speed_K_per_s", NO_SHARE, Heater::speed);

        static final List<OfBody> ALL = List.of(HEAT, COOLING, READY, READY_ERROR, SPEED);
    }

    /**
     * User-defined signals: each reading unchanged, and what follows from those of a heater.
     *
     * @param quantities the readings, in a fixed order
     * @return those of the readings, in that order, and then those of the heaters
     */
    public static List<Signal> ofOwn(Collection<OwnQuantity> quantities) {
        Table table = new Table(ALL.size());
        quantities.forEach(table::asRead);
        for (OwnHeater heater : OwnHeater.among(quantities)) {
            Body body = Body.of(heater);
            for (OfBody kind : OfBody.ALL) {
                table.add(kind, body);
            }
        }
        return List.copyOf(table.signals);
    }

    /**
     * A signal of one of several printers, or of all of them, with its own name.
     *
     * @param index its place among all
     * @param key its name
     * @param low what counts as 0; NaN if unknown
     * @param high what counts as 1; NaN if that is not known
     */
    static Signal together(int index, String key, double low, double high) {
        return new Signal(index, key, low, high, Optional.empty(), sources -> {
            throw new IllegalStateException(key + " has no source of its own");
        });
    }

    /** Signals during declaration. */
    private static final class Table {
        private final List<Signal> signals = new ArrayList<>();
        private final int before;

        /**
         * Begins.
         *
         * @param before how many signals there are already
         */
        Table(int before) {
            this.before = before;
        }

        void add(String key, boolean isShare, Function<Sources, Track> track) {
            add(key, isShare, Optional.empty(), track);
        }

        void add(OfBody kind, Body body) {
            add(body.key() + '.' + kind.measure, kind.isShare, sources -> kind.track.apply(sources.heater(body)));
        }

        void ofKnownBodies(OfBody kind) {
            Body.KNOWN.forEach(body -> add(kind, body));
        }

        void asRead(Quantity quantity, boolean isShare) {
            add(quantity.key(), isShare, Optional.of(quantity), sources -> sources.reading(quantity));
        }

        void asRead(OwnQuantity own) {
            add(own.key(), own.low(), own.high(), Optional.empty(), sources -> sources.own(own.key()));
        }

        private void add(String key, boolean isShare, Optional<Quantity> quantity, Function<Sources, Track> track) {
            double unknown = Double.NaN;
            add(key, isShare ? 0 : unknown, isShare ? 1 : unknown, quantity, track);
        }

        private void add(
                String key, double low, double high, Optional<Quantity> quantity, Function<Sources, Track> track) {
            signals.add(new Signal(before + signals.size(), key, low, high, quantity, track));
        }
    }

    /**
     * All built-in signals.
     *
     * @return in the order of their {@link #index}; the same list each time
     */
    public static List<Signal> all() {
        return ALL;
    }

    /**
     * The signal with a name.
     *
     * @param key as in {@link #key}
     * @return the signal, empty if there is none with that name
     */
    public static Optional<Signal> named(String key) {
        return ALL.stream().filter(signal -> signal.key.equals(key)).findFirst();
    }

    /**
     * The signal that follows a reading unchanged.
     *
     * @param quantity what is read: the progress of the job, or a temperature
     * @return the signal
     * @throws IllegalArgumentException if no signal follows that quantity unchanged
     */
    public static Signal of(Quantity quantity) {
        return ALL.stream()
                .filter(signal -> signal.quantity.filter(quantity::equals).isPresent())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no signal follows " + quantity + " as it is read"));
    }

    /**
     * Its place among all.
     *
     * @return 0 or more
     */
    int index() {
        return index;
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
     * Whether it is known what counts as 0 and as 1, so that it needs no bounds to be followed.
     *
     * @return false for temperatures, times and speeds
     */
    public boolean isShare() {
        return !Double.isNaN(low);
    }

    /**
     * The value that counts as 0 unless configured otherwise.
     *
     * @return NaN unless {@link #isShare}
     */
    public double low() {
        return low;
    }

    /**
     * The value that counts as 1 unless configured otherwise.
     *
     * @return NaN unless {@link #isShare}
     */
    public double high() {
        return high;
    }

    /**
     * The quantity that this follows unchanged.
     *
     * @return empty if the signal is calculated from several
     */
    public Optional<Quantity> quantity() {
        return quantity;
    }

    /**
     * The source of its value.
     *
     * @param sources the sources of one printer's signals
     * @return its value over time
     */
    Track track(Sources sources) {
        return track.apply(sources);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Signal signal
                && index == signal.index
                && key.equals(signal.key)
                && Double.compare(low, signal.low) == 0
                && Double.compare(high, signal.high) == 0;
    }

    @Override
    public int hashCode() {
        return key.hashCode();
    }

    @Override
    public String toString() {
        return key;
    }
}
