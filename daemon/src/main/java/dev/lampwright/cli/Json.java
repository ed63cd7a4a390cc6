package dev.lampwright.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;

/** Writes values as JSON (RFC 8259). */
final class Json {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private Json() {}

    /**
     * Reads JSON.
     *
     * @param text JSON
     * @return what it says
     * @throws JsonProcessingException if it is none
     */
    static JsonNode read(String text) throws JsonProcessingException {
        return MAPPER.readTree(text);
    }

    /**
     * A value as JSON, on one line.
     *
     * @param value a map with texts for keys, a collection, a text, a finite number or a boolean, and such within
     * @return JSON
     * @throws IllegalArgumentException for what cannot be written
     */
    static String of(Object value) {
        try {
            return MAPPER.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("no JSON for " + value, e);
        }
    }
}
