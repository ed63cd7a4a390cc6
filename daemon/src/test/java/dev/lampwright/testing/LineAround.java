package dev.lampwright.testing;

import dev.lampwright.link.Line;
import dev.lampwright.link.LineException;

/** A line that forwards everything to another, for tests that change a part of it. */
public class LineAround implements Line {
    private final Line line;

    /**
     * Wraps a line.
     *
     * @param line the line to forward to
     */
    protected LineAround(Line line) {
        this.line = line;
    }

    @Override
    public void open() throws LineException {
        line.open();
    }

    @Override
    public int read(byte[] into, int timeoutMillis) throws LineException {
        return line.read(into, timeoutMillis);
    }

    @Override
    public void write(byte[] bytes, int count) throws LineException {
        line.write(bytes, count);
    }

    @Override
    public void close() {
        line.close();
    }

    @Override
    public int baud() {
        return line.baud();
    }

    @Override
    public String name() {
        return line.name();
    }
}
