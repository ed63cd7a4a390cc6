package dev.lampwright.payload;

import com.fasterxml.jackson.core.JsonPointer;

/**
 * Where a value stands in a payload: a JSON Pointer (RFC 6901), or the payload itself.
 *
 * @param pointer the pointer into the payload's JSON
 * @param bare whether the payload is no JSON document but the value itself, as text
 */
public record PayloadPath(JsonPointer pointer, boolean bare) {
    /** The payload itself is the value. */
    public static final PayloadPath BARE = new PayloadPath(JsonPointer.empty(), true);

    /**
     * Reads a pointer.
     *
     * @param text a JSON Pointer such as {@code /plate/now}; empty for the whole document
     * @return where it points
     * @throws IllegalArgumentException if it is no JSON Pointer; the message says why
     */
    public static PayloadPath at(String text) {
        return new PayloadPath(JsonPointer.compile(text), false);
    }

    @Override
    public String toString() {
        return bare ? "the payload itself" : pointer.toString();
    }
}
