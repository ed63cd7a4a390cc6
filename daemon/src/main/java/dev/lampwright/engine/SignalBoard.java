package dev.lampwright.engine;

import dev.lampwright.signal.Signal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLongArray;

/** Where the frame loop leaves the signals' values for others to read. It neither waits nor allocates. */
final class SignalBoard {
    private static final Signal[] SIGNALS = Signal.all().toArray(Signal[]::new);

    private final AtomicLongArray bits = new AtomicLongArray(SIGNALS.length);

    /** Makes a board on which every signal is unknown. */
    SignalBoard() {
        for (int i = 0; i < SIGNALS.length; i++) {
            bits.set(i, Double.doubleToRawLongBits(Double.NaN));
        }
    }

    /**
     * Leaves the values of one frame.
     *
     * @param chain what made the frame
     * @param nanos its time
     */
    void leave(Chain chain, long nanos) {
        for (int i = 0; i < SIGNALS.length; i++) {
            bits.setOpaque(i, Double.doubleToRawLongBits(chain.signal(SIGNALS[i], nanos)));
        }
    }

    /**
     * The values of the newest frame, or for some the one before.
     *
     * @return by the name that the configuration has for each; NaN for unknown
     */
    Map<String, Double> read() {
        Map<String, Double> values = new LinkedHashMap<>();
        for (int i = 0; i < SIGNALS.length; i++) {
            values.put(SIGNALS[i].key(), Double.longBitsToDouble(bits.getOpaque(i)));
        }
        return values;
    }
}
