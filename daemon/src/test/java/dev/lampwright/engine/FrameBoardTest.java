package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A reader gets the figures of one frame, complete. */
class FrameBoardTest {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final List<Signal> WITH_OWN = Stream.concat(
                    Signal.all().stream(), Signal.ofOwn(List.of(new OwnQuantity("fan", "percent", 0, 100))).stream())
            .toList();
    private static final List<String> ONE = List.of("");
    private static final List<String> TWO = List.of("alder", "birch");
    private static final int READERS = 2;
    private static final int READS = 20_000;
    private static final int LOOKS = 16;

    private final String[] looks = new String[LOOKS];
    private final FrameBoard.Figures figures = new FrameBoard.Figures();
    private final FrameBoard board;

    FrameBoardTest() {
        figures.follow(Signal.all());
        figures.show(ONE);
        board = new FrameBoard(figures);
        for (int i = 0; i < LOOKS; i++) {
            looks[i] = "look " + i;
        }
    }

    private static <T> T oneOf(T[] all, long number) {
        return all[(int) (number % all.length)];
    }

    /** Figures that are all derived from one number. */
    private void write(long number) {
        figures.show(number % 3 == 0 ? TWO : ONE);
        for (int i = 0; i < figures.states.length; i++) {
            figures.states[i] = oneOf(PrinterState.values(), number + i);
            figures.alarms[i] = oneOf(AlarmState.values(), number + i);
            figures.faultsLast[i] = (number + i) % 3 == 0;
            figures.looks[i] = looks[(int) ((number + i) % LOOKS)];
        }
        figures.milliamps = (int) (number % 1_000_000);
        figures.ceilingMilliamps = (int) (number % 1_000_000) + 1;
        figures.mostMilliamps = (int) (number % 1_000_000) + 2;
        figures.frames = number;
        figures.skipped = 3 * number;
        figures.dimmedFrames = 5 * number;
        figures.heldFrames = 7 * number;
        figures.follow(number % 3 == 0 ? WITH_OWN : Signal.all());
        for (int i = 0; i < figures.values.length; i++) {
            figures.values[i] = number + i / 64.0;
        }
        board.write(figures);
    }

    /** The same, built by hand. */
    private FrameReport of(long number) {
        Map<String, Double> signals = new LinkedHashMap<>();
        for (Signal signal : number % 3 == 0 ? WITH_OWN : Signal.all()) {
            signals.put(signal.key(), number + signals.size() / 64.0);
        }
        List<FrameReport.Printer> printers = new ArrayList<>();
        for (String name : number % 3 == 0 ? TWO : ONE) {
            long shown = number + printers.size();
            printers.add(new FrameReport.Printer(
                    name,
                    oneOf(PrinterState.values(), shown),
                    oneOf(AlarmState.values(), shown),
                    shown % 3 == 0,
                    looks[(int) (shown % LOOKS)]));
        }
        int small = (int) (number % 1_000_000);
        return new FrameReport(
                printers,
                new StripCurrent(small, small + 1),
                small + 2,
                number,
                3 * number,
                5 * number,
                7 * number,
                signals);
    }

    @Test
    void nothingIsKnownAtFirst() {
        FrameReport first = board.read(0, 60, false);
        assertEquals(PrinterState.SILENT, first.state());
        assertEquals(AlarmState.NORMAL, first.alarm());
        assertEquals("", first.look());
        assertEquals(0, first.frames());
        assertEquals(
                Signal.all().stream().map(Signal::key).toList(),
                List.copyOf(first.signals().keySet()));
        assertTrue(first.signals().values().stream().allMatch(value -> value.isNaN()), first.toString());
    }

    /** Frames follow one another without a pause, and every third has another configuration, until every reader has read enough. */
    @Test
    void noReaderEverSeesTwoFramesMixed() throws InterruptedException, ExecutionException {
        AtomicInteger reading = new AtomicInteger(READERS);
        ExecutorService readers = Executors.newFixedThreadPool(READERS);
        List<Future<?>> ends = new ArrayList<>();
        write(0);
        for (int i = 0; i < READERS; i++) {
            ends.add(readers.submit(() -> {
                try {
                    readAndCompare();
                } finally {
                    reading.decrementAndGet();
                }
            }));
        }
        for (long number = 1; reading.get() > 0; number++) {
            write(number);
        }
        readers.shutdown();
        for (Future<?> end : ends) {
            end.get();
        }
    }

    private void readAndCompare() {
        long before = 0;
        for (int i = 0; i < READS; i++) {
            FrameReport read = board.read(0, 60, false);
            assertTrue(read.frames() >= before, "went back from " + before + " to " + read.frames());
            before = read.frames();
            assertEquals(of(before), read);
        }
    }

    /** The JVM counts the bytes; nothing else is counted on this thread in the meantime. */
    @Test
    void writingAllocatesNothing() {
        writeMany();
        long before = THREADS.getCurrentThreadAllocatedBytes();
        writeMany();
        long allocated = THREADS.getCurrentThreadAllocatedBytes() - before;
        assertEquals(0, allocated / 2000, allocated + " bytes in 2000 frames");
    }

    private void writeMany() {
        for (int i = 0; i < 2000; i++) {
            figures.frames = i;
            board.write(figures);
        }
    }
}
