package dev.lampwright.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** A JSON object that is built key by key, in this order. Putting an existing key replaces its value. For one thread. */
public final class JsonObject {
    private static final int DIGITS = 3;

    final ObjectNode node = Json.MAPPER.createObjectNode();

    /**
     * Puts a text.
     *
     * @param key its key
     * @param value any text
     * @return this
     */
    public JsonObject put(String key, String value) {
        node.put(key, value);
        return this;
    }

    /**
     * Puts true or false.
     *
     * @param key its key
     * @param value which
     * @return this
     */
    public JsonObject put(String key, boolean value) {
        node.put(key, value);
        return this;
    }

    /**
     * Puts a whole number.
     *
     * @param key its key
     * @param value any
     * @return this
     */
    public JsonObject put(String key, long value) {
        node.put(key, value);
        return this;
    }

    /**
     * Puts a number with the digits needed to distinguish it from neighbouring floats.
     *
     * @param key its key
     * @param value finite
     * @return this
     */
    public JsonObject put(String key, float value) {
        node.put(key, value);
        return this;
    }

    /**
     * Puts a number with the digits needed to distinguish it from neighbouring doubles.
     *
     * @param key its key
     * @param value finite; otherwise null is put
     * @return this
     */
    public JsonObject put(String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value);
        } else {
            node.putNull(key);
        }
        return this;
    }

    /**
     * Puts an object.
     *
     * @param key its key
     * @param value with its current content
     * @return this
     */
    public JsonObject put(String key, JsonObject value) {
        node.set(key, value.node);
        return this;
    }

    /**
     * Puts an array.
     *
     * @param key its key
     * @param value with its current content
     * @return this
     */
    public JsonObject put(String key, JsonArray value) {
        node.set(key, value.node);
        return this;
    }

    /**
     * Puts a text, unless it is empty.
     *
     * @param key its key
     * @param value any text
     * @return this
     */
    public JsonObject putIfAny(String key, String value) {
        return value.isEmpty() ? this : put(key, value);
    }

    /**
     * Puts an object, unless it is empty.
     *
     * @param key its key
     * @param value with its current content
     * @return this
     */
    public JsonObject putIfAny(String key, JsonObject value) {
        return value.node.isEmpty() ? this : put(key, value);
    }

    /**
     * Puts a number rounded to thousandths, unless it is NaN or infinite.
     *
     * @param key its key
     * @param value any number
     * @return this
     */
    public JsonObject putRounded(String key, double value) {
        if (Double.isFinite(value)) {
            node.put(
                    key,
                    BigDecimal.valueOf(value)
                            .setScale(DIGITS, RoundingMode.HALF_EVEN)
                            .stripTrailingZeros());
        }
        return this;
    }

    /**
     * The object so far.
     *
     * @return JSON on one line
     */
    public String text() {
        return Json.of(node);
    }
}
