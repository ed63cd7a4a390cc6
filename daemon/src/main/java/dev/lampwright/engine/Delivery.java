package dev.lampwright.engine;

import dev.lampwright.payload.JsonLine;
import dev.lampwright.payload.Value;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What happened to frames on their way to the light, if unusual. The flash limit depends on it, so it is recorded and played back as a JSON
 * line:
 *
 * <pre>{"tick":512,"late_ns":250000000,"relit":true}</pre>
 *
 * @param tick the first frame that is made with this knowledge
 * @param lateNanos how long frames took until they were shown, in ns; 0 if that has not changed
 * @param relit whether the controller may have gone dark and come back
 */
public record Delivery(long tick, long lateNanos, boolean relit) {
    private static final String TICK = "tick";
    private static final String LATE = "late_ns";
    private static final String RELIT = "relit";

    /**
     * Writes it.
     *
     * @return a line
     */
    String line() {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put(TICK, tick);
        line.put(LATE, lateNanos);
        line.put(RELIT, relit);
        return JsonLine.of(line);
    }

    /**
     * Reads a line.
     *
     * @param text JSON
     * @return the content; empty if it is about something else
     * @throws IllegalArgumentException if it is about this, and is not valid; the message says why
     */
    public static Optional<Delivery> read(String text) {
        return JsonLine.withAny(text, LATE, RELIT).map(Delivery::of);
    }

    private static Delivery of(JsonLine line) {
        OptionalLong tick = line.count(TICK);
        OptionalLong late = line.count(LATE);
        if (line.keys().size() == 3
                && tick.isPresent()
                && late.isPresent()
                && line.value(RELIT).orElse(new Value.None()) instanceof Value.Flag relit) {
            return new Delivery(tick.getAsLong(), late.getAsLong(), relit.on());
        }
        throw new IllegalArgumentException(
                "has late_ns or relit, which go with tick alone; leave such lines as they were recorded");
    }
}
