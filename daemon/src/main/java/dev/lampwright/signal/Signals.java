package dev.lampwright.signal;

import dev.lampwright.printer.PrinterStatus;
import java.util.List;
import java.util.stream.Stream;

/** Follows the printer's status and gives each signal's value at any time. Allocates nothing. */
public final class Signals {
    /** What stays as it is until something new is taken in stays so for this many ns: a day, far longer than anything is asked about. */
    public static final long FOREVER = 24 * 3600 * 1_000_000_000L;

    private final Sources sources;
    private final List<Signal> all;
    private final Track[] tracks;

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
     * @param room where the printer is
     */
    public Signals(Room room) {
        this(room, List.of());
    }

    /**
     * Makes signals that are all unknown.
     *
     * @param room where the printer is
     * @param own those of the user's own readings, as {@link Signal#ofOwn} gives them
     */
    public Signals(Room room, List<Signal> own) {
        sources = new Sources(room);
        all = Stream.concat(Signal.all().stream(), own.stream()).toList();
        tracks = all.stream().map(signal -> signal.track(sources)).toArray(Track[]::new);
    }

    /** Those of one of several printers, with tracks that include the others'. */
    Signals(Signals alone, Track[] tracks) {
        sources = alone.sources;
        all = alone.all;
        this.tracks = tracks;
    }

    /** The values of {@link #all}, in their order; not to be changed. */
    Track[] tracks() {
        return tracks;
    }

    /**
     * All that have values here.
     *
     * @return those that Lampwright knows, and then those of the user's own; the same list each time
     */
    public List<Signal> all() {
        return all;
    }

    /**
     * Takes what is new in a status; the same status again changes nothing.
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
     * @return the value, NaN if it is unknown
     */
    public double value(Signal signal, long nanos) {
        return tracks[signal.index()].at(nanos);
    }

    /**
     * How long a signal keeps its value, if nothing new is followed.
     *
     * @param signal which
     * @param nanos from when on, no earlier than the last status came
     * @return ns: 0 while it moves, {@link #FOREVER} if it does not
     */
    public long stillFor(Signal signal, long nanos) {
        return tracks[signal.index()].stillFor(nanos);
    }
}
