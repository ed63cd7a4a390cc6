package dev.lampwright.engine;

import dev.lampwright.payload.JsonLine;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A frame that was made before its time on the grid, because a fault must not wait. Moving light in it is drawn for that earlier time, so
 * it is recorded and played back as a JSON line:
 *
 * <pre>{"tick":512,"early_ns":9000000}</pre>
 *
 * @param tick the frame, counted from 0
 * @param nanos how much earlier it was made, in ns, 1 or more
 */
public record Early(long tick, long nanos) {
    private static final String TICK = "tick";
    private static final String EARLY = "early_ns";

    /**
     * Writes it.
     *
     * @return a line
     */
    String line() {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put(TICK, tick);
        line.put(EARLY, nanos);
        return JsonLine.of(line);
    }

    /**
     * Reads a line.
     *
     * @param text JSON
     * @return the content; empty if it is about something else
     * @throws IllegalArgumentException if it is about this, and is not valid; the message says why
     */
    public static Optional<Early> read(String text) {
        return JsonLine.withAny(text, EARLY).map(Early::of);
    }

    private static Early of(JsonLine line) {
        OptionalLong tick = line.count(TICK);
        OptionalLong early = line.count(EARLY);
        if (line.keys().size() == 2 && tick.isPresent() && early.orElse(0) > 0) {
            return new Early(tick.getAsLong(), early.getAsLong());
        }
        throw new IllegalArgumentException(
                "has early_ns, which goes with tick alone; leave such lines as they were recorded");
    }
}
