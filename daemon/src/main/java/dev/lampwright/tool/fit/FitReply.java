package dev.lampwright.tool.fit;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a held fitting answers.
 *
 * @param status as HTTP has it (RFC 9110, section 15)
 * @param body an object of JSON: maps, lists, texts, numbers, booleans
 */
public record FitReply(int status, Map<String, Object> body) {
    /** Keeps a copy of the map, in its order. */
    public FitReply {
        body = Collections.unmodifiableMap(new LinkedHashMap<>(body));
    }

    /** What there is to see. */
    static FitReply of(Map<String, Object> body) {
        return new FitReply(200, body);
    }

    /**
     * A refusal.
     *
     * @param status as HTTP has it
     * @param code by which a page finds its own text
     * @param why in English, with what to do
     */
    static FitReply refusal(int status, String code, String why) {
        return refusal(status, code, why, Map.of());
    }

    /** The same with values that a page puts into its text. */
    static FitReply refusal(int status, String code, String why, Map<String, Object> values) {
        return new FitReply(status, Map.of("done", false, "code", code, "why", why, "values", values));
    }
}
