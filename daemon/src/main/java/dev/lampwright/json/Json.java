package dev.lampwright.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.Optional;

/** Values as JSON and back. */
public final class Json {
    /** Numbers without an exponent, for programs simpler than a JSON parser. */
    static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private Json() {}

    /**
     * Reads JSON.
     *
     * @param text any text
     * @return the value; empty if it is not exactly one JSON value
     */
    public static Optional<JsonNode> read(String text) {
        try {
            JsonNode node = MAPPER.readTree(text);
            return node.isMissingNode() ? Optional.empty() : Optional.of(node);
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    /**
     * An object with one key.
     *
     * @param key the key
     * @param value its value
     * @return the object
     */
    public static JsonNode object(String key, JsonNode value) {
        return MAPPER.createObjectNode().set(key, value);
    }

    /**
     * A value as JSON for people to read, on many lines.
     *
     * @param value as in {@link #of}
     * @return JSON without a final line break
     * @throws IllegalArgumentException for values that cannot be written
     */
    public static String pretty(Object value) {
        try {
            return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("no JSON for " + value, e);
        }
    }

    /**
     * A value as JSON, on one line.
     *
     * @param value a map with text keys, a collection, a text, a finite number or a boolean, and nested ones
     * @return JSON
     * @throws IllegalArgumentException for values that cannot be written
     */
    public static String of(Object value) {
        try {
            return MAPPER.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("no JSON for " + value, e);
        }
    }
}
