package dev.lampwright.signal;

import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A number that light can follow, known by the name that the configuration has for it. Those that Lampwright knows are in {@link #table}: a
 * line there is a new signal, or a new one of each heated body. Readings of the user's own follow them ({@link #ofOwn}).
 */
public final class Signal {
    private static final boolean SHARE = true;
    private static final boolean NO_SHARE = false;
    private static final List<Signal> ALL = table();

    /** Share of the job that is done, 0 to 1. */
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
        Table table = new Table();
        // How far a body has got from where this heat-up began to its target.
        table.ofEachBody("heat", SHARE, Heater::heat);
        // How hot a body still is while it is not heated, from 1 where it was hottest to 0 where it may be touched.
        table.ofEachBody("cooling", SHARE, Heater::cooling);
        // The most of these.
        table.add("still_hot", SHARE, Sources::stillHot);
        // Time until a body is ready, and its standard error.
        table.ofEachBody("ready_s", NO_SHARE, Heater::ready);
        table.ofEachBody("ready_error_s", NO_SHARE, Heater::readyError);
        // How fast a body gets hotter; below 0 while it cools.
        table.ofEachBody("speed_K_per_s", NO_SHARE, Heater::speed);
        // How fast the job goes on, as share of it per hour.
        table.add("job.speed_per_h", NO_SHARE, sources -> sources.job().speed());
        table.asRead(Quantity.JOB_PROGRESS, SHARE);
        // Time until the job is done: by the printer's word, or else by its progress.
        table.add("job.left_s", NO_SHARE, sources -> sources.job().left());
        for (Heater.Body body : Heater.Body.values()) {
            table.asRead(body.actual(), NO_SHARE);
            table.asRead(body.target(), NO_SHARE);
        }
        return List.copyOf(table.signals);
    }

    private static Signal signal(
            int index, String key, boolean isShare, Optional<Quantity> quantity, Function<Sources, Track> track) {
        double unknown = Double.NaN;
        return new Signal(index, key, isShare ? 0 : unknown, isShare ? 1 : unknown, quantity, track);
    }

    /**
     * Signals that follow readings of the user's own as they are.
     *
     * @param quantities the readings, in an order that stays
     * @return one for each, in that order
     */
    public static List<Signal> ofOwn(Collection<OwnQuantity> quantities) {
        List<Signal> own = new ArrayList<>();
        for (OwnQuantity quantity : quantities) {
            own.add(new Signal(
                    ALL.size() + own.size(),
                    quantity.key(),
                    quantity.low(),
                    quantity.high(),
                    Optional.empty(),
                    sources -> sources.own(quantity.key())));
        }
        return List.copyOf(own);
    }

    /** Signals while they are declared. */
    private static final class Table {
        private final List<Signal> signals = new ArrayList<>();

        void add(String key, boolean isShare, Function<Sources, Track> track) {
            signals.add(signal(signals.size(), key, isShare, Optional.empty(), track));
        }

        void ofEachBody(String measure, boolean isShare, Function<Heater, Track> track) {
            for (Heater.Body body : Heater.Body.values()) {
                add(body.key() + '.' + measure, isShare, sources -> track.apply(sources.heater(body)));
            }
        }

        void asRead(Quantity quantity, boolean isShare) {
            signals.add(signal(
                    signals.size(),
                    quantity.key(),
                    isShare,
                    Optional.of(quantity),
                    sources -> sources.reading(quantity)));
        }
    }

    /**
     * All signals that Lampwright knows.
     *
     * @return in the order of their {@link #index}; the same list each time
     */
    public static List<Signal> all() {
        return ALL;
    }

    /**
     * The signal of a name.
     *
     * @param key as in {@link #key}
     * @return the signal, empty if there is none of that name
     */
    public static Optional<Signal> named(String key) {
        return ALL.stream().filter(signal -> signal.key.equals(key)).findFirst();
    }

    /**
     * The signal that follows a reading as it is.
     *
     * @param quantity what is read: the progress of the job, or a temperature
     * @return the signal
     * @throws IllegalArgumentException if no signal follows that quantity as it is read
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
     * The value that counts as 0 unless something else is said.
     *
     * @return NaN unless {@link #isShare}
     */
    public double low() {
        return low;
    }

    /**
     * The value that counts as 1 unless something else is said.
     *
     * @return NaN unless {@link #isShare}
     */
    public double high() {
        return high;
    }

    /**
     * The quantity that this follows as it is read.
     *
     * @return empty if the signal is calculated from several
     */
    public Optional<Quantity> quantity() {
        return quantity;
    }

    /**
     * What its value comes from.
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
