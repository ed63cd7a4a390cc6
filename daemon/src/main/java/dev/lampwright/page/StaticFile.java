package dev.lampwright.page;

import java.io.IOException;
import java.io.OutputStream;

/** Something that can be answered with. */
final class StaticFile {
    private final String type;
    private final byte[] bytes;

    /**
     * Takes a content.
     *
     * @param type its media type
     * @param bytes the content, not to be changed any more
     */
    StaticFile(String type, byte[] bytes) {
        this.type = type;
        this.bytes = bytes;
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
