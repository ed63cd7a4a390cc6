package dev.lampwright.testing;

import java.util.List;

/** What Lampwright logs while this is open. */
public final class LogLines implements AutoCloseable {
    private final CapturedLog captured = new CapturedLog("dev.lampwright");

    /** The lines that contain a text. */
    public List<String> with(String text) {
        return captured.lines().stream().filter(line -> line.contains(text)).toList();
    }

    @Override
    public void close() {
        captured.close();
    }
}
