package dev.lampwright.testing;

import dev.lampwright.demo.MemoryController;
import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Keeps everything that a controller has shown. May be used by several threads. */
public final class Recording implements MemoryController.Display {
    /**
     * One thing shown.
     *
     * @param light why
     * @param sequence sequence number of the message that brought it, 0 for the controller's own
     * @param nanos when
     * @param strip the strip's bytes
     * @param duties the dimmers' duties
     */
    public record Entry(
            MemoryController.Light light, int sequence, long nanos, List<Integer> strip, List<Integer> duties) {
        /** Whether the host sent it. */
        public boolean fromHost() {
            return light == MemoryController.Light.WHOLE || light == MemoryController.Light.DIMMED;
        }
    }

    private final List<Entry> entries = new ArrayList<>();

    @Override
    public synchronized void show(MemoryController.Light light, int sequence, Frame frame, long nanos) {
        List<Integer> strip = new ArrayList<>();
        for (byte value : frame.strip()) {
            strip.add(value & 0xFF);
        }
        List<Integer> duties = new ArrayList<>();
        for (int duty : frame.duties()) {
            duties.add(duty);
        }
        entries.add(new Entry(light, sequence, nanos, List.copyOf(strip), List.copyOf(duties)));
    }

    /** Everything that was shown so far, oldest first; a copy. */
    public synchronized List<Entry> entries() {
        return List.copyOf(entries);
    }

    /** How many things were shown so far. */
    public synchronized int size() {
        return entries.size();
    }

    /** What was shown last; something must have been. */
    public synchronized Entry last() {
        return entries.get(entries.size() - 1);
    }

    /** Whether what was shown last meets a condition; false if nothing was. */
    public synchronized boolean lastIs(Predicate<Entry> so) {
        return !entries.isEmpty() && so.test(last());
    }

    /** Everything that was shown so far, oldest first, which is then removed. */
    public synchronized List<Entry> drain() {
        List<Entry> drained = List.copyOf(entries);
        entries.clear();
        return drained;
    }

    /** Removes what was shown so far. */
    public synchronized void clear() {
        entries.clear();
    }
}
