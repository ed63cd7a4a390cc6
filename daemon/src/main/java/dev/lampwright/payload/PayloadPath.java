package dev.lampwright.payload;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;

/** Where a value is in a payload: a JSON Pointer (RFC 6901), or the payload itself. Two with the same spelling are equal. */
public final class PayloadPath {
    /** The payload is not a JSON document but the value itself, as text. */
    public static final PayloadPath BARE = new PayloadPath(JsonPointer.empty(), true);

    private final JsonPointer pointer;
    private final boolean bare;

    private PayloadPath(JsonPointer pointer, boolean bare) {
        this.pointer = pointer;
        this.bare = bare;
    }

    /**
     * Reads a pointer.
     *
     * @param text a JSON Pointer such as {@code /plate/now}; empty for the whole document
     * @return where it points
     * @throws IllegalArgumentException if it is not a JSON Pointer; the message says why
     */
    public static PayloadPath at(String text) {
        return at(JsonPointer.compile(text));
    }

    /** Where a pointer points. */
    static PayloadPath at(JsonPointer pointer) {
        return new PayloadPath(pointer, false);
    }

    /**
     * Whether the payload itself is the value.
     *
     * @return false if it is a JSON document
     */
    public boolean bare() {
        return bare;
    }

    /**
     * The pointer.
     *
     * @return as RFC 6901 writes it; empty for the whole document and for the payload itself
     */
    public String pointer() {
        return pointer.toString();
    }

    /** What it points to in a document; a missing node if nothing. */
    JsonNode in(JsonNode document) {
        return document.at(pointer);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PayloadPath path && path.bare == bare && path.pointer.equals(pointer);
    }

    @Override
    public int hashCode() {
        return 31 * pointer.hashCode() + Boolean.hashCode(bare);
    }

    @Override
    public String toString() {
        return bare ? "the payload itself" : pointer();
    }
}
