package dev.lampwright.tool.bench;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The object that a request carries. Each value is checked when it is taken. */
final class BenchBody {
    private static final int DEEPEST = 8;

    private final JsonNode object;

    private BenchBody(JsonNode object) {
        this.object = object;
    }

    /**
     * Reads one.
     *
     * @param json any text
     * @throws BenchRefusal if it is not an object of JSON
     */
    static BenchBody read(String json) throws BenchRefusal {
        return new BenchBody(Json.read(json)
                .filter(JsonNode::isObject)
                .orElseThrow(() -> BenchRefusal.badRequest("send one JSON object")));
    }

    /** What a query carries: texts without anything to decode in them. */
    static BenchBody ofQuery(String query) {
        Map<String, Object> values = new LinkedHashMap<>();
        for (String pair : query.split("&", -1)) {
            int equals = pair.indexOf('=');
            if (equals > 0) {
                values.put(pair.substring(0, equals), pair.substring(equals + 1));
            }
        }
        return new BenchBody(Json.read(Json.of(values)).orElseThrow());
    }

    boolean has(String key) {
        return object.has(key) && !object.get(key).isNull();
    }

    /** A text; empty if it is not there. */
    String text(String key) throws BenchRefusal {
        JsonNode value = object.path(key);
        if (has(key) && !value.isTextual()) {
            throw wrong(key, "a text");
        }
        return value.asText("");
    }

    boolean flag(String key, boolean otherwise) throws BenchRefusal {
        if (has(key) && !object.get(key).isBoolean()) {
            throw wrong(key, "true or false");
        }
        return object.path(key).asBoolean(otherwise);
    }

    double number(String key, double least, double most, double otherwise) throws BenchRefusal {
        if (!has(key)) {
            return otherwise;
        }
        double number = object.get(key).isNumber() ? object.get(key).asDouble() : Double.NaN;
        if (!(number >= least && number <= most)) {
            throw wrong(key, "a number from " + plain(least) + " to " + plain(most));
        }
        return number;
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }

    int whole(String key, int least, int most, int otherwise) throws BenchRefusal {
        double number = number(key, least, most, otherwise);
        if (number != Math.rint(number)) {
            throw wrong(key, "a whole number from " + least + " to " + most);
        }
        return (int) number;
    }

    /** Texts in an array; none if it is not there. */
    List<String> texts(String key) throws BenchRefusal {
        List<String> texts = new ArrayList<>();
        if (has(key) && !object.get(key).isArray()) {
            throw wrong(key, "an array of texts");
        }
        for (JsonNode text : object.path(key)) {
            if (!text.isTextual()) {
                throw wrong(key, "an array of texts");
            }
            texts.add(text.asText());
        }
        return texts;
    }

    /** An object within; empty if it is not there. */
    Optional<BenchBody> within(String key) throws BenchRefusal {
        if (!has(key)) {
            return Optional.empty();
        }
        if (!object.get(key).isObject()) {
            throw wrong(key, "an object");
        }
        return Optional.of(new BenchBody(object.get(key)));
    }

    /** An object as it is. */
    JsonNode object(String key) throws BenchRefusal {
        if (!object.path(key).isObject()) {
            throw wrong(key, "an object");
        }
        return object.get(key);
    }

    /** Numbers by name; null is none. */
    Map<String, OptionalDouble> numbers(String key) throws BenchRefusal {
        Map<String, OptionalDouble> numbers = new LinkedHashMap<>();
        if (has(key) && !object.get(key).isObject()) {
            throw wrong(key, "an object of numbers");
        }
        for (Map.Entry<String, JsonNode> entry : object.path(key).properties()) {
            JsonNode value = entry.getValue();
            if (!value.isNull() && !(value.isNumber() && Double.isFinite(value.asDouble()))) {
                throw wrong(key + "." + entry.getKey(), "a number, or null if it is unknown");
            }
            numbers.put(entry.getKey(), value.isNull() ? OptionalDouble.empty() : OptionalDouble.of(value.asDouble()));
        }
        return numbers;
    }

    /**
     * A table of the file.
     *
     * @return its values, of the kinds that the reader of the file gives
     */
    Map<String, Object> table(String key) throws BenchRefusal {
        if (!object.path(key).isObject()) {
            throw wrong(key, "an object with the keys of the file");
        }
        return table(key, object.get(key), 0);
    }

    /** Tables in an array. */
    List<Map<String, Object>> tables(String key) throws BenchRefusal {
        List<Map<String, Object>> tables = new ArrayList<>();
        if (!object.path(key).isArray()) {
            throw wrong(key, "an array of objects with the keys of the file");
        }
        for (JsonNode each : object.get(key)) {
            if (!each.isObject()) {
                throw wrong(key, "an array of objects with the keys of the file");
            }
            tables.add(table(key, each, 0));
        }
        return tables;
    }

    private static Map<String, Object> table(String key, JsonNode node, int depth) throws BenchRefusal {
        Map<String, Object> table = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> entry : node.properties()) {
            String path = key + "." + entry.getKey();
            table.put(entry.getKey(), value(path, entry.getValue(), depth + 1));
        }
        return table;
    }

    private static Object value(String key, JsonNode node, int depth) throws BenchRefusal {
        if (depth > DEEPEST) {
            throw wrong(key, "fewer levels");
        }
        if (node.isObject()) {
            return table(key, node, depth);
        }
        if (node.isArray()) {
            List<Object> array = new ArrayList<>();
            for (JsonNode element : node) {
                array.add(value(key, element, depth + 1));
            }
            return array;
        }
        return scalar(key, node);
    }

    private static Object scalar(String key, JsonNode node) throws BenchRefusal {
        if (node.isTextual()) {
            return node.asText();
        }
        if (node.isBoolean()) {
            return node.asBoolean();
        }
        if (node.isInt()) {
            return node.asInt();
        }
        if (node.isLong()) {
            return node.asLong();
        }
        if (node.isNumber() && Double.isFinite(node.asDouble())) {
            return node.decimalValue();
        }
        throw wrong(key, "a value that the file can have, not " + node);
    }

    private static BenchRefusal wrong(String key, String wanted) {
        return BenchRefusal.badRequest(key + " must be " + wanted)
                .with("key", key)
                .with("wanted", wanted);
    }
}
