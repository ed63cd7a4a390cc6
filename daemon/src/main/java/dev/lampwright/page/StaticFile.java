package dev.lampwright.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;

/** Something that can be answered with, such as one of the files that the page is made of. */
final class StaticFile {
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "svg", "image/svg+xml");
    private static final String[] FILES = {
        "index.html",
        "page.css",
        "icon.svg",
        "page.js",
        "asks.js",
        "chart.js",
        "fault.js",
        "readings.js",
        "shape.js",
        "still.js",
        "stream.js",
        "strip.js",
        "wiring.js",
        "words.js"
    };

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

    /**
     * All files of the page.
     *
     * @return by path
     */
    static Map<String, StaticFile> all() {
        Map<String, StaticFile> sheets = new LinkedHashMap<>();
        for (String file : FILES) {
            sheets.put(file.equals("index.html") ? "/" : "/" + file, read(file));
        }
        return sheets;
    }

    private static StaticFile read(String file) {
        try (InputStream in = StaticFile.class.getResourceAsStream(file)) {
            return new StaticFile(TYPES.get(file.substring(file.lastIndexOf('.') + 1)), in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
