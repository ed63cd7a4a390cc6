package dev.lampwright.page;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Content for an answer. */
final class StaticFile {
    /** The media type of JSON. Source: RFC 8259, section 11. */
    static final String JSON = "application/json";

    private final String type;
    private final byte[] bytes;

    /**
     * Creates one from its content.
     *
     * @param type its media type
     * @param bytes the content, which must not be modified afterwards
     */
    StaticFile(String type, byte[] bytes) {
        this.type = type;
        this.bytes = bytes;
    }

    /** A JSON text. */
    static StaticFile json(String text) {
        return new StaticFile(JSON, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Its media type. */
    String type() {
        return type;
    }

    /** Its length. */
    int length() {
        return bytes.length;
    }

    /** Writes its content. */
    void writeTo(OutputStream out) throws IOException {
        out.write(bytes);
    }
}
