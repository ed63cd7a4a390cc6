package dev.lampwright.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One of the files that the page is made of.
 *
 * @param type its media type
 * @param bytes its content
 */
record Sheet(String type, byte[] bytes) {
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
        "words.js"
    };

    /**
     * All of them.
     *
     * @return by path
     */
    static Map<String, Sheet> all() {
        Map<String, Sheet> sheets = new LinkedHashMap<>();
        for (String file : FILES) {
            sheets.put(file.equals("index.html") ? "/" : "/" + file, read(file));
        }
        return sheets;
    }

    private static Sheet read(String file) {
        try (InputStream in = Sheet.class.getResourceAsStream(file)) {
            return new Sheet(TYPES.get(file.substring(file.lastIndexOf('.') + 1)), in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
