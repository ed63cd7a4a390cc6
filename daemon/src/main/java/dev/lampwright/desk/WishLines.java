package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.json.Json;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Wishes as JSON lines, to be recorded and played back. A line has all wishes from one frame on; times are in ns since the first frame,
 * light and levels as the daemon uses them:
 *
 * <pre>{"tick":120,"wishes":{"brightness":0.5,"quiet":1.0,"levels":[null,1.0],"look":"done","look_until_ns":61000000000,…}}</pre>
 */
public final class WishLines {
    private static final String TICK = "tick";
    private static final String WISHES = "wishes";
    private static final String UNTIL = "_until_ns";

    private WishLines() {}

    /**
     * What a line says.
     *
     * @param tick the first frame that followed the wishes
     * @param wishes the wishes, with times in ns since the first frame
     */
    public record Entry(long tick, Wishes wishes) {}

    /**
     * Writes wishes.
     *
     * @param wishes what people ask for
     * @param tick the first frame that follows them
     * @param startNanos the time of the first frame, on the wishes' clock
     * @return a line
     */
    public static String line(Wishes wishes, long tick, long startNanos) {
        JsonObject all = new JsonObject();
        for (Wish wish : Wish.values()) {
            put(all, wish, wishes, startNanos);
        }
        return new JsonObject().put(TICK, tick).put(WISHES, all).text();
    }

    private static void put(JsonObject all, Wish wish, Wishes wishes, long startNanos) {
        String key = wish.word();
        switch (wish.kind()) {
            case SHARE -> all.put(key, wishes.share(wish));
            case COUNT -> all.put(key, wishes.count(wish));
            case COUNTS -> putIfAny(all, key, wishes.counts(wish));
            case FLOATS -> all.put(key, array(wishes.floats(wish)));
            case SECONDS -> putIfAny(all, key, wishes.floats(wish));
            case NAME_FOR_A_TIME ->
                all.put(key, wishes.name(wish)).put(key + UNTIL, wishes.untilNanos(wish) - startNanos);
            case FLOATS_FOR_A_TIME ->
                all.put(key, array(wishes.floats(wish))).put(key + UNTIL, wishes.untilNanos(wish) - startNanos);
        }
    }

    /**
     * Reads a line.
     *
     * @param line JSON
     * @return what it says; empty if it is not about wishes
     * @throws IllegalArgumentException if it is, and is not valid; the message says why
     */
    public static Optional<Entry> read(String line) {
        JsonNode node = Json.read(line).orElse(MissingNode.getInstance());
        if (!node.path(WISHES).isObject()) {
            return Optional.empty();
        }
        if (node.size() != 2
                || !node.path(TICK).canConvertToLong()
                || node.path(TICK).asLong() < 0) {
            throw new IllegalArgumentException(
                    "has wishes, which go with tick alone; leave such lines as they were recorded");
        }
        return Optional.of(new Entry(node.get(TICK).asLong(), wishes(node.get(WISHES))));
    }

    private static Wishes wishes(JsonNode node) {
        Wishes wishes = Wishes.NONE;
        for (Wish wish : Wish.values()) {
            wishes = with(wishes, wish, node);
        }
        return wishes;
    }

    private static Wishes with(Wishes before, Wish wish, JsonNode node) {
        String key = wish.word();
        return switch (wish.kind()) {
            case SHARE -> before.with(wish, share(node, key));
            case COUNT -> before.withCount(wish, whole(node, key));
            case COUNTS -> before.withCounts(wish, counts(node.path(key)));
            case FLOATS -> before.with(wish, floats(node, key, 1));
            case SECONDS -> node.has(key) ? before.with(wish, floats(node, key, Float.MAX_VALUE)) : before;
            case NAME_FOR_A_TIME -> before.with(wish, node.path(key).asText(), whole(node, key + UNTIL));
            case FLOATS_FOR_A_TIME -> before.with(wish, floats(node, key, 1), whole(node, key + UNTIL));
        };
    }

    private static float share(JsonNode node, String key) {
        JsonNode value = node.path(key);
        if (!value.isNumber() || value.floatValue() < 0 || value.floatValue() > 1) {
            throw new IllegalArgumentException("has wishes with " + key + " " + value + "; write a number from 0 to 1");
        }
        return value.floatValue();
    }

    private static long whole(JsonNode node, String key) {
        JsonNode value = node.path(key);
        if (!value.canConvertToLong()) {
            throw new IllegalArgumentException("has wishes with " + key + " " + value + "; write a whole number");
        }
        return value.asLong();
    }

    private static Map<String, Long> counts(JsonNode node) {
        Map<String, Long> counts = new TreeMap<>();
        node.properties().forEach(entry -> counts.put(entry.getKey(), whole(node, entry.getKey())));
        return counts;
    }

    private static void putIfAny(JsonObject all, String key, Map<String, Long> counts) {
        JsonObject told = new JsonObject();
        new TreeMap<>(counts).forEach(told::put);
        all.putIfAny(key, told);
    }

    private static float[] floats(JsonNode node, String key, float most) {
        if (!node.path(key).isArray()) {
            throw new IllegalArgumentException("has wishes without " + key + "; write an array of numbers");
        }
        float[] floats = new float[node.get(key).size()];
        int count = 0;
        for (JsonNode value : node.get(key)) {
            float number = value.isNull() ? Float.NaN : value.floatValue();
            if (!value.isNull() && (!value.isNumber() || !(number >= 0 && number <= most))) {
                String range = most == 1 ? "numbers from 0 to 1" : "numbers of 0 or more";
                throw new IllegalArgumentException(
                        "has wishes with " + value + " in " + key + "; write " + range + ", or null");
            }
            floats[count++] = number;
        }
        return floats;
    }

    private static void putIfAny(JsonObject all, String key, List<Float> floats) {
        if (!floats.isEmpty()) {
            all.put(key, array(floats));
        }
    }

    /** NaN is written as null. */
    private static JsonArray array(List<Float> floats) {
        JsonArray array = new JsonArray();
        floats.forEach(array::add);
        return array;
    }
}
