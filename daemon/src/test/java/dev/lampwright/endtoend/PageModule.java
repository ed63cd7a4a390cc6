package dev.lampwright.endtoend;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** A module of the page's scripts as text that a test can run: its functions and classes, without those that it imports. */
final class PageModule {
    private PageModule() {}

    /**
     * Reads one.
     *
     * @param name of the file
     * @return its text without imports and the word {@code export}
     */
    static String text(String name) {
        try (InputStream in = PageModule.class.getResourceAsStream("/dev/lampwright/page/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .replaceAll("(?m)^import .*$", "")
                    .replaceAll("(?m)^export ", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
