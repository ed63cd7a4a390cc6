package dev.lampwright.signal;

import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;

/**
 * The signals of several printers. Light that follows one printer can also follow the others, by their names ({@code alder.bed.heat}), and
 * how many of them are in a state ({@code printers.printing}). For one thread; allocates nothing after construction.
 */
public final class PrinterSignals {
    /** The prefix of signals of all printers. */
    public static final String ALL = "printers";

    private final List<Signals> each;
    private final List<Count> counts =
            Stream.of(PrinterState.values()).map(Count::new).toList();

    private PrinterSignals(List<Signals> alone) {
        List<Track> shared = new ArrayList<>();
        alone.forEach(signals -> shared.addAll(List.of(signals.tracks())));
        shared.addAll(counts);
        each = alone.stream()
                .map(signals -> new Signals(
                        signals,
                        Stream.concat(Stream.of(signals.tracks()), shared.stream())
                                .toArray(Track[]::new)))
                .toList();
    }

    /** How many printers are in a state. */
    private static final class Count implements Track {
        private final PrinterState state;
        private int printers;

        Count(PrinterState state) {
            this.state = state;
        }

        void of(PrinterState[] states) {
            printers = 0;
            for (PrinterState one : states) {
                printers += one == state ? 1 : 0;
            }
        }

        @Override
        public double at(long nanos) {
            return printers;
        }

        @Override
        public long stillFor(long nanos) {
            return Signals.FOREVER;
        }
    }

    /**
     * Creates signals that are all unknown.
     *
     * @param rooms where each printer is
     * @param own the signals of user-defined readings, of any of the printers, as returned by {@link Signal#ofOwn}
     * @return the signals
     */
    public static PrinterSignals of(List<Room> rooms, List<Signal> own) {
        return new PrinterSignals(
                rooms.stream().map(room -> new Signals(room, own)).toList());
    }

    /**
     * The signals of one printer by its name.
     *
     * @param printer its name
     * @param which its place among the printers, from 0
     * @param all how many signals each printer has: built-in and user-defined
     * @param signals the signals to name
     * @return one for each
     */
    public static List<Signal> named(String printer, int which, int all, Collection<Signal> signals) {
        return signals.stream()
                .map(signal -> Signal.together(
                        all * (1 + which) + signal.index(), printer + '.' + signal.key(), signal.low(), signal.high()))
                .toList();
    }

    /**
     * How many printers are in a state, for each state. For light, 0 means none of them and 1 all.
     *
     * @param printers how many printers there are
     * @param all how many signals each printer has
     * @return one for each state
     */
    public static List<Signal> counts(int printers, int all) {
        List<Signal> counts = new ArrayList<>();
        for (PrinterState state : PrinterState.values()) {
            int index = all * (1 + printers) + counts.size();
            counts.add(Signal.together(index, ALL + '.' + state.word(), 0, printers));
        }
        return counts;
    }

    /**
     * The signals of one printer.
     *
     * @param printer its place among the printers, from 0
     * @return the same each time
     */
    public Signals of(int printer) {
        return each.get(printer);
    }

    /**
     * Sets what each printer is doing.
     *
     * @param states the effective states now
     */
    public void count(PrinterState[] states) {
        for (int i = 0; i < counts.size(); i++) {
            counts.get(i).of(states);
        }
    }
}
