package dev.lampwright.engine;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.desk.Report;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import java.lang.invoke.VarHandle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicLongArray;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;

/**
 * Holds the figures of each frame for other threads to read, always complete for one frame. One thread writes: it neither waits nor
 * allocates. Any thread may read.
 *
 * <p>A sequence lock: the version is odd while figures are being written, and a reader accepts what it has read only if the version was
 * even before and is the same afterwards. Source of the fences: Boehm, "Can seqlocks get along with programming language memory models?",
 * 2012; {@link java.util.concurrent.locks.StampedLock} has them in the same places.
 */
final class FrameBoard {
    private static final int SPINS = 100;
    private static final long PAUSE_NANOS = 10_000;

    private static final int MILLIAMPS = 0;
    private static final int CEILING = 1;
    private static final int MOST = 2;
    private static final int FRAMES = 3;
    private static final int SKIPPED = 4;
    private static final int DIMMED = 5;
    private static final int HELD = 6;
    private static final int REST_FROM = 7;
    private static final int REST_FRAMES = 8;
    private static final int CELLS = 9;

    private final AtomicLong version = new AtomicLong();
    private final AtomicLongArray cells = new AtomicLongArray(CELLS);
    private final AtomicReference<Printers> printers = new AtomicReference<>(new Printers(List.of()));
    private final AtomicReference<Values> values = new AtomicReference<>(new Values(List.of()));

    /** Cells for what each printer is doing; the same ones for as long as a configuration is in use. */
    private static final class Printers {
        final List<String> names;
        final AtomicReferenceArray<PrinterState> states;
        final AtomicReferenceArray<AlarmState> alarms;
        final AtomicReferenceArray<String> looks;
        final AtomicIntegerArray faultsLast;

        Printers(List<String> names) {
            this.names = names;
            states = new AtomicReferenceArray<>(names.size());
            alarms = new AtomicReferenceArray<>(names.size());
            looks = new AtomicReferenceArray<>(names.size());
            faultsLast = new AtomicIntegerArray(names.size());
        }

        void write(Figures figures) {
            for (int i = 0; i < figures.states.length; i++) {
                states.setOpaque(i, figures.states[i]);
                alarms.setOpaque(i, figures.alarms[i]);
                looks.setOpaque(i, figures.looks[i]);
                faultsLast.setOpaque(i, figures.faultsLast[i] ? 1 : 0);
            }
        }

        List<FrameReport.Printer> copy() {
            List<FrameReport.Printer> copy = new ArrayList<>(names.size());
            for (int i = 0; i < names.size(); i++) {
                copy.add(new FrameReport.Printer(
                        names.get(i),
                        states.getOpaque(i),
                        alarms.getOpaque(i),
                        faultsLast.getOpaque(i) != 0,
                        looks.getOpaque(i)));
            }
            return copy;
        }
    }

    /** Cells for the values of some signals, the same as long as a configuration is active. */
    private static final class Values {
        final List<Signal> signals;
        final AtomicLongArray cells;
        final int[] all;
        final int[] outlined;

        Values(List<Signal> signals) {
            this.signals = signals;
            cells = new AtomicLongArray(signals.size());
            all = IntStream.range(0, signals.size()).toArray();
            outlined = IntStream.range(0, signals.size())
                    .filter(i -> Report.isOutlined(signals.get(i).key()))
                    .toArray();
        }

        long[] copy() {
            long[] copy = new long[cells.length()];
            for (int i = 0; i < copy.length; i++) {
                copy[i] = cells.getOpaque(i);
            }
            return copy;
        }

        Map<String, Double> named(long[] copy, boolean outline) {
            Map<String, Double> named = new LinkedHashMap<>();
            for (int i : outline ? outlined : all) {
                named.put(signals.get(i).key(), Double.longBitsToDouble(copy[i]));
            }
            return named;
        }
    }

    /** The figures of a frame while they are being collected. For the writing thread. */
    static final class Figures {
        /** Names of the printers, and what each is doing. */
        List<String> printers = List.of();

        PrinterState[] states = {};
        AlarmState[] alarms = {};
        boolean[] faultsLast = {};
        String[] looks = {};
        int milliamps;
        int ceilingMilliamps;
        int mostMilliamps;
        long frames;
        long skipped;
        long dimmedFrames;
        long heldFrames;
        /** While light stands still: when the next frame is due, and how many are due before one is made again. */
        long restFrom;

        long restFrames;
        List<Signal> signals = List.of();
        /** Of each signal. */
        double[] values = {};

        /**
         * From now on, holds what these printers are doing; at first nothing is known about them.
         *
         * @param names their names; if they are the same as before, what they are doing stays
         */
        void show(List<String> names) {
            if (!names.equals(printers)) {
                printers = List.copyOf(names);
                states = new PrinterState[names.size()];
                Arrays.fill(states, PrinterState.SILENT);
                alarms = new AlarmState[names.size()];
                Arrays.fill(alarms, AlarmState.NORMAL);
                faultsLast = new boolean[names.size()];
                looks = new String[names.size()];
                Arrays.fill(looks, "");
            }
        }

        /**
         * From now on, holds the values of these signals, which are all unknown at first.
         *
         * @param followed the signals, a list that does not change; if it is the same list as before, values stay
         */
        void follow(List<Signal> followed) {
            if (followed != signals) {
                signals = followed;
                values = new double[followed.size()];
                Arrays.fill(values, Double.NaN);
            }
        }
    }

    /**
     * Creates a board.
     *
     * @param first its initial content
     */
    FrameBoard(Figures first) {
        write(first);
    }

    /**
     * Replaces the previous figures. They are complete when this is called, so nothing that fails can leave half of them.
     *
     * @param figures the figures of a frame; copied
     */
    void write(Figures figures) {
        Values into = valuesOf(figures.signals);
        Printers shown = printersOf(figures.printers);
        long next = version.getPlain() + 1;
        version.setOpaque(next);
        VarHandle.releaseFence();
        shown.write(figures);
        cells.setOpaque(MILLIAMPS, figures.milliamps);
        cells.setOpaque(CEILING, figures.ceilingMilliamps);
        cells.setOpaque(MOST, figures.mostMilliamps);
        cells.setOpaque(FRAMES, figures.frames);
        cells.setOpaque(SKIPPED, figures.skipped);
        cells.setOpaque(DIMMED, figures.dimmedFrames);
        cells.setOpaque(HELD, figures.heldFrames);
        cells.setOpaque(REST_FROM, figures.restFrom);
        cells.setOpaque(REST_FRAMES, figures.restFrames);
        for (int i = 0; i < figures.values.length; i++) {
            into.cells.setOpaque(i, Double.doubleToRawLongBits(figures.values[i]));
        }
        values.setOpaque(into);
        printers.setOpaque(shown);
        version.setRelease(next + 1);
    }

    private Printers printersOf(List<String> names) {
        Printers before = printers.getPlain();
        return before.names == names ? before : new Printers(names);
    }

    private Values valuesOf(List<Signal> signals) {
        Values before = values.getPlain();
        return before.signals == signals ? before : new Values(signals);
    }

    /**
     * Reads the newest figures. Waits only while they are being written, which takes less than a microsecond.
     *
     * @param nowNanos the time; of the frames skipped while light stands still, those due by then are counted
     * @param framesPerSecond rate of the frames
     * @param outline whether only the {@linkplain Report#isOutlined outlined} signals are needed
     * @return the figures of one frame
     */
    FrameReport read(long nowNanos, int framesPerSecond, boolean outline) {
        long[] copy = new long[CELLS];
        for (int attempt = 0; ; attempt++) {
            long before = version.getAcquire();
            Printers shown = printers.getOpaque();
            List<FrameReport.Printer> readPrinters = shown.copy();
            Values from = values.getOpaque();
            long[] read = from.copy();
            for (int i = 0; i < CELLS; i++) {
                copy[i] = cells.getOpaque(i);
            }
            VarHandle.acquireFence();
            if (before % 2 == 0 && version.getOpaque() == before) {
                copy[FRAMES] += rested(copy, nowNanos, framesPerSecond);
                return report(readPrinters, from.named(read, outline), copy);
            }
            pause(attempt);
        }
    }

    /** What the strip of the newest frame draws, in mA; costs nothing, unlike reading everything. */
    int milliamps() {
        return (int) cells.getOpaque(MILLIAMPS);
    }

    private static long rested(long[] copy, long nowNanos, int framesPerSecond) {
        long passed = nowNanos - copy[REST_FROM];
        return copy[REST_FRAMES] == 0 || passed < 0
                ? 0
                : Math.min(copy[REST_FRAMES], 1 + Ticks.at(passed, framesPerSecond));
    }

    private static void pause(int attempt) {
        if (attempt < SPINS) {
            Thread.onSpinWait();
        } else {
            LockSupport.parkNanos(PAUSE_NANOS);
        }
    }

    private static FrameReport report(List<FrameReport.Printer> printers, Map<String, Double> signals, long[] copy) {
        return new FrameReport(
                printers,
                new StripCurrent((int) copy[MILLIAMPS], (int) copy[CEILING]),
                (int) copy[MOST],
                copy[FRAMES],
                copy[SKIPPED],
                copy[DIMMED],
                copy[HELD],
                signals);
    }
}
