package dev.lampwright.printer;

import dev.lampwright.testing.CapturedLog;
import java.util.List;

/** What this package logs while this is open. */
final class LogLines implements AutoCloseable {
    private final CapturedLog captured = new CapturedLog("dev.lampwright.printer");

    /** The lines with this in them. */
    List<String> with(String text) {
        return captured.lines().stream().filter(line -> line.contains(text)).toList();
    }

    @Override
    public void close() {
        captured.close();
    }
}
