package dev.lampwright.json;

import com.fasterxml.jackson.databind.node.ArrayNode;

/** A JSON array that is built value by value. For one thread. */
public final class JsonArray {
    final ArrayNode node = Json.MAPPER.createArrayNode();

    /**
     * Adds a text.
     *
     * @param value the text
     * @return this
     */
    public JsonArray add(String value) {
        node.add(value);
        return this;
    }

    /**
     * Adds a whole number.
     *
     * @param value any
     * @return this
     */
    public JsonArray add(long value) {
        node.add(value);
        return this;
    }

    /**
     * Adds a number with the digits needed to distinguish it from neighbouring floats.
     *
     * @param value finite; otherwise null is added
     * @return this
     */
    public JsonArray add(float value) {
        if (Float.isFinite(value)) {
            node.add(value);
        } else {
            node.addNull();
        }
        return this;
    }

    /**
     * Adds a number with the digits needed to distinguish it from neighbouring doubles.
     *
     * @param value finite; otherwise null is added
     * @return this
     */
    public JsonArray add(double value) {
        if (Double.isFinite(value)) {
            node.add(value);
        } else {
            node.addNull();
        }
        return this;
    }

    /**
     * Adds an object.
     *
     * @param value with its current content
     * @return this
     */
    public JsonArray add(JsonObject value) {
        node.add(value.node);
        return this;
    }

    /**
     * Adds an array.
     *
     * @param value with its current content
     * @return this
     */
    public JsonArray add(JsonArray value) {
        node.add(value.node);
        return this;
    }

    /**
     * The array so far.
     *
     * @return JSON on one line
     */
    public String text() {
        return Json.of(node);
    }
}
