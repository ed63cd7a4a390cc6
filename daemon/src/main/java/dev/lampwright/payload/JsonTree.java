package dev.lampwright.payload;

import com.fasterxml.jackson.databind.JsonNode;

/** Reads parsed JSON as {@link Value}s. */
final class JsonTree {
    private JsonTree() {}

    /**
     * The value of a node.
     *
     * @param node any except a missing one
     * @return the value
     */
    static Value value(JsonNode node) {
        return switch (node.getNodeType()) {
            case NUMBER -> new Value.Numeric(node.numberValue());
            case STRING -> new Value.Text(node.textValue());
            case BOOLEAN -> new Value.Flag(node.booleanValue());
            case NULL -> new Value.None();
            default -> new Value.Structure();
        };
    }
}
