package dev.lampwright.payload;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** A JSON object on one line. It is read strictly: a duplicate key, or anything after the object, is a mistake. */
public final class JsonLine {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    private final JsonNode object;

    private JsonLine(JsonNode object) {
        this.object = object;
    }

    /**
     * Writes a line.
     *
     * @param entries texts, finite numbers, null, and nested maps of these, in their order
     * @return JSON without a line break; a {@link java.math.BigDecimal} is written without an exponent
     */
    public static String of(Map<String, ?> entries) {
        try {
            return MAPPER.writeValueAsString(entries);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("numbers and words can always be written", e);
        }
    }

    /**
     * Reads a line.
     *
     * @param line any text
     * @return the object
     * @throws UnreadableException if the line is not exactly one JSON object; the message says why
     */
    public static JsonLine read(String line) throws UnreadableException {
        try {
            JsonNode node = MAPPER.readTree(line);
            if (node.isObject()) {
                return new JsonLine(node);
            }
        } catch (JsonProcessingException e) {
            String why = e.getOriginalMessage().replaceAll("\\s+", " ");
            throw new UnreadableException("is not one JSON object: " + why);
        }
        throw new UnreadableException("is not a JSON object");
    }

    /**
     * Reads a line of one of several kinds, distinguished by a key.
     *
     * @param line any text
     * @param keys the keys of one kind
     * @return the object, if it is one and has any of the keys
     */
    public static Optional<JsonLine> withAny(String line, String... keys) {
        try {
            return Optional.of(read(line)).filter(object -> Arrays.stream(keys).anyMatch(object::has));
        } catch (UnreadableException e) {
            return Optional.empty();
        }
    }

    /**
     * The keys.
     *
     * @return in their order
     */
    public List<String> keys() {
        return object.properties().stream().map(Map.Entry::getKey).toList();
    }

    /**
     * Whether a key exists.
     *
     * @param key any
     * @return true also for null
     */
    public boolean has(String key) {
        return object.has(key);
    }

    /**
     * The value of a key.
     *
     * @param key any
     * @return empty if there is none; a number has all its digits
     */
    public Optional<Value> value(String key) {
        return Optional.ofNullable(object.get(key)).map(JsonTree::value);
    }

    /**
     * The value of a key, if that is a count.
     *
     * @param key the key
     * @return a whole number of 0 or more; empty if there is none
     */
    public OptionalLong count(String key) {
        OptionalLong whole = value(key).orElse(new Value.None()) instanceof Value.Numeric number
                ? number.whole()
                : OptionalLong.empty();
        return whole.isPresent() && whole.getAsLong() >= 0 ? whole : OptionalLong.empty();
    }

    /**
     * The object of a key.
     *
     * @param key any
     * @return an object without keys if there is nothing; empty if it is not an object
     */
    public Optional<JsonLine> object(String key) {
        JsonNode inner = object.has(key) ? object.get(key) : JsonNodeFactory.instance.objectNode();
        return inner.isObject() ? Optional.of(new JsonLine(inner)) : Optional.empty();
    }

    /**
     * The value of a key, for a message.
     *
     * @param key an existing key
     * @return JSON
     */
    public String json(String key) {
        return object.path(key).toString();
    }
}
