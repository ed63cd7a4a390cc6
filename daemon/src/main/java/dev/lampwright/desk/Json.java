package dev.lampwright.desk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.Consumer;

/** A JSON object that is put together key by key. What is not known is left out. */
final class Json {
    /** Numbers without an exponent, for those who read the status with a simpler program than a JSON reader. */
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    private final ObjectNode node;

    private Json(ObjectNode node) {
        this.node = node;
    }

    static Json object() {
        return new Json(MAPPER.createObjectNode());
    }

    Json put(String key, String value) {
        node.put(key, value);
        return this;
    }

    /** Puts a text; leaves it out if it is empty. */
    Json putIfAny(String key, String value) {
        return value.isEmpty() ? this : put(key, value);
    }

    Json put(String key, boolean value) {
        node.put(key, value);
        return this;
    }

    Json put(String key, long value) {
        node.put(key, value);
        return this;
    }

    /** Puts a number, rounded to thousandths; leaves it out if it is none. */
    Json put(String key, double value) {
        if (Double.isFinite(value)) {
            node.put(
                    key,
                    BigDecimal.valueOf(value)
                            .setScale(3, RoundingMode.HALF_EVEN)
                            .stripTrailingZeros());
        }
        return this;
    }

    /** Puts an object within; leaves it out if nothing is put into it. */
    Json put(String key, Consumer<Json> filling) {
        Json inner = object();
        filling.accept(inner);
        if (!inner.node.isEmpty()) {
            node.set(key, inner.node);
        }
        return this;
    }

    String text() {
        try {
            return MAPPER.writeValueAsString(node);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("numbers and words can always be written", e);
        }
    }

    /** Reads JSON; throws if the text is none, or has something behind its end. */
    static JsonNode parse(String text) throws JsonProcessingException {
        return MAPPER.reader()
                .with(com.fasterxml.jackson.databind.DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .readTree(text);
    }
}
