package dev.lampwright.tool.bench;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the bench answers.
 *
 * @param status as HTTP has it (RFC 9110, section 15)
 * @param body an object of JSON: maps, lists, texts, numbers, booleans and null
 */
public record BenchReply(int status, Map<String, Object> body) {
    /** Keeps a copy of the map, in its order. */
    public BenchReply {
        body = Collections.unmodifiableMap(new LinkedHashMap<>(body));
    }

    static BenchReply of(Map<String, Object> body) {
        return new BenchReply(200, body);
    }
}
