package dev.lampwright.cli;

import dev.lampwright.file.StandardStream;
import dev.lampwright.tool.check.Progress;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.function.LongSupplier;

/** A line that says how many looks have been drawn, shown after a second. It disappears when all have been drawn. */
final class DrawingLine implements Progress {
    private static final long PATIENCE_NANOS = 1_000_000_000L;

    private final PrintWriter writer;
    private final Path file;
    private final LongSupplier clock;
    private final long begun;
    private int width;

    /**
     * Writes nothing yet.
     *
     * @param writer where the line goes
     * @param file whose looks they are
     * @param clock a time in ns
     */
    DrawingLine(PrintWriter writer, Path file, LongSupplier clock) {
        this.writer = writer;
        this.file = file;
        this.clock = clock;
        begun = clock.getAsLong();
    }

    /** Progress that is visible if standard error is a terminal. */
    static Progress onTerminal(PrintWriter error, Path file) {
        return StandardStream.isTerminal(StandardStream.ERROR)
                ? new DrawingLine(error, file, System::nanoTime)
                : Progress.UNSEEN;
    }

    @Override
    public void at(int done, int of) {
        if (done == of) {
            erase();
        } else if (clock.getAsLong() - begun >= PATIENCE_NANOS) {
            show(file + ": drawing look " + (done + 1) + " of " + of);
        }
    }

    private void erase() {
        if (width > 0) {
            show("");
            write("\r");
        }
    }

    /** Overwrites the line, padded with spaces where it was longer. */
    private void show(String text) {
        write("\r" + text + " ".repeat(Math.max(0, width - text.length())));
        width = text.length();
    }

    private void write(String text) {
        writer.print(text);
        writer.flush();
    }
}
