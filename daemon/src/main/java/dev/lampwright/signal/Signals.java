package dev.lampwright.signal;

import dev.lampwright.printer.PrinterStatus;
import java.util.List;
import java.util.stream.Stream;

/** Follows the printer's status and provides each signal's value at any time. Allocates nothing. */
public final class Signals {
    /** The time in ns for a value that stays until something new arrives: a day, far longer than any query. */
    public static final long FOREVER = 24 * 3600 * 1_000_000_000L;

    private final Sources sources;
    private final List<Signal> all;
    private final Track[] tracks;

    /**
     * Creates signals that are all unknown.
     *
     * @param ambientC temperature of the room, in °C; with the usual bound for hot
     */
    public Signals(double ambientC) {
        this(Room.at(ambientC));
    }

    /**
     * Creates signals that are all unknown.
     *
     * @param room where the printer is
     */
    public Signals(Room room) {
        this(room, List.of());
    }

    /**
     * Creates signals that are all unknown.
     *
     * @param room where the printer is
     * @param own the signals of user-defined readings, as returned by {@link Signal#ofOwn}
     */
    public Signals(Room room, List<Signal> own) {
        sources = new Sources(room);
        all = Stream.concat(Signal.all().stream(), own.stream()).toList();
        tracks = all.stream().map(signal -> signal.track(sources)).toArray(Track[]::new);
    }

    /** The signals of one of several printers, with tracks that include the others'. */
    Signals(Signals alone, Track[] tracks) {
        sources = alone.sources;
        all = alone.all;
        this.tracks = tracks;
    }

    /** The values of {@link #all}, in their order; must not be modified. */
    Track[] tracks() {
        return tracks;
    }

    /**
     * All signals that have values here.
     *
     * @return the built-in ones, followed by the user-defined ones; the same list each time
     */
    public List<Signal> all() {
        return all;
    }

    /**
     * Takes in what is new in a status; the same status again changes nothing.
     *
     * @param status the latest
     */
    public void follow(PrinterStatus status) {
        sources.follow(status);
    }

    /**
     * The value of a signal.
     *
     * @param signal which
     * @param nanos when, no earlier than the last status came
     * @return the value, NaN if unknown
     */
    public double value(Signal signal, long nanos) {
        return tracks[signal.index()].at(nanos);
    }

    /**
     * Keeps a signal at a value, whatever is followed.
     *
     * @param signal which
     * @param value the value; NaN for unknown
     */
    public void hold(Signal signal, double value) {
        hold(signal.index(), value);
    }

    /**
     * Keeps all signals at the values that they have elsewhere.
     *
     * @param others the same signals
     * @param nanos when, no earlier than the last status came there
     */
    public void holdAs(Signals others, long nanos) {
        for (int i = 0; i < tracks.length; i++) {
            hold(i, others.tracks[i].at(nanos));
        }
    }

    private void hold(int index, double value) {
        tracks[index] = new Track() {
            @Override
            public double at(long nanos) {
                return value;
            }

            @Override
            public long stillFor(long nanos) {
                return FOREVER;
            }
        };
    }

    /**
     * How long a signal keeps its value, if nothing new is taken in.
     *
     * @param signal which
     * @param nanos start of the period, no earlier than the last status came
     * @return ns: 0 while it moves, {@link #FOREVER} if it does not
     */
    public long stillFor(Signal signal, long nanos) {
        return tracks[signal.index()].stillFor(nanos);
    }
}
