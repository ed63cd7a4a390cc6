package dev.lampwright.tool.fit;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.phrase.Phrase;
import java.util.LinkedHashMap;
import java.util.Map;

/** Phrases as saved in the journal. Their values are text or whole numbers. */
final class KeptPhrase {
    private KeptPhrase() {}

    /** As an object of JSON. */
    static Map<String, Object> map(Phrase phrase) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("code", phrase.code());
        map.put("values", phrase.values());
        map.put("english", phrase.english());
        return map;
    }

    /** Reads it back. */
    static Phrase of(JsonNode saved) {
        Map<String, Object> values = new LinkedHashMap<>();
        saved.path("values")
                .properties()
                .forEach(one -> values.put(
                        one.getKey(),
                        one.getValue().isNumber()
                                ? (Object) one.getValue().asLong()
                                : one.getValue().asText()));
        return new Phrase(
                saved.path("code").asText(), values, saved.path("english").asText());
    }
}
