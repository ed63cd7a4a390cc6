package dev.lampwright.config;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is wrong and what to do, in English, and as a code with values for its translation.
 *
 * @param code names the two sentences; empty if there is no code for them
 * @param what what is wrong, to follow a key
 * @param whatWouldBeRight what to do
 * @param values the texts and numbers in the sentences, by name
 */
public record MistakeText(String code, String what, String whatWouldBeRight, Map<String, Object> values) {
    /** Keeps a copy of the map, in its order. */
    public MistakeText {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /**
     * Something without values.
     *
     * @param code names it
     * @param what what is wrong
     * @param whatWouldBeRight what to do
     */
    public MistakeText(String code, String what, String whatWouldBeRight) {
        this(code, what, whatWouldBeRight, Map.of());
    }

    /**
     * The same with one more value.
     *
     * @param name the value's name
     * @param value a text or a number
     * @return both
     */
    public MistakeText with(String name, Object value) {
        Map<String, Object> next = new LinkedHashMap<>(values);
        next.put(name, value);
        return new MistakeText(code, what, whatWouldBeRight, next);
    }
}
