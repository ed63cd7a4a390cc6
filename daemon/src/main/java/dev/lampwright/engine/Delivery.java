package dev.lampwright.engine;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import dev.lampwright.json.Json;
import dev.lampwright.json.JsonObject;
import java.util.Optional;

/**
 * What became of frames on their way to the light, as far as it is out of the ordinary. The flash limit follows it, so it is recorded and
 * played back, as a JSON line:
 *
 * <pre>{"tick":512,"late_ns":250000000,"relit":true}</pre>
 *
 * @param tick the first frame that is made with this known
 * @param lateNanos how long frames took until they were shown, in ns; 0 if that is not new
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
        return new JsonObject()
                .put(TICK, tick)
                .put(LATE, lateNanos)
                .put(RELIT, relit)
                .text();
    }

    /**
     * Reads a line.
     *
     * @param line JSON
     * @return what it says; empty if it is about something else
     * @throws IllegalArgumentException if it is about this, and makes no sense; the message says why
     */
    public static Optional<Delivery> read(String line) {
        JsonNode node = Json.read(line).orElse(MissingNode.getInstance());
        if (!node.has(LATE) && !node.has(RELIT)) {
            return Optional.empty();
        }
        boolean sound = node.size() == 3
                && node.path(TICK).canConvertToLong()
                && node.path(LATE).canConvertToLong()
                && node.path(RELIT).isBoolean()
                && node.path(TICK).asLong() >= 0
                && node.path(LATE).asLong() >= 0;
        if (!sound) {
            throw new IllegalArgumentException(
                    "has late_ns or relit, which go with tick alone; leave such lines as they were recorded");
        }
        return Optional.of(new Delivery(
                node.get(TICK).asLong(),
                node.get(LATE).asLong(),
                node.get(RELIT).asBoolean()));
    }
}
