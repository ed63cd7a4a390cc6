package dev.lampwright.tool.fit;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * A terminal of two streams. A separate thread reads lines, a few ahead, so that {@link #stop} can end a wait for an answer that never
 * comes.
 */
public final class LineTerminal implements Terminal {
    private static final String PROMPT = "> ";
    private static final int LINES_AHEAD = 16;
    private static final Optional<String> END = Optional.empty();

    private final BufferedReader in;
    private final PrintWriter out;
    private final BlockingQueue<Optional<String>> lines = new ArrayBlockingQueue<>(LINES_AHEAD);
    private volatile boolean stopped;

    /**
     * Creates a terminal and starts reading.
     *
     * @param in where answers come from
     * @param out where questions go
     */
    public LineTerminal(Reader in, PrintWriter out) {
        this.in = new BufferedReader(in);
        this.out = out;
        Thread reader = new Thread(this::read, "answers");
        reader.setDaemon(true);
        reader.start();
    }

    @Override
    public void print(String line) {
        out.println(line);
        out.flush();
    }

    @Override
    public Optional<String> readLine() {
        out.print(PROMPT);
        out.flush();
        try {
            Optional<String> line = stopped ? END : lines.take();
            if (line.isEmpty()) {
                stopped = true;
            }
            return stopped ? END : line;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return END;
        }
    }

    @Override
    public boolean ended() {
        Optional<String> next = lines.peek();
        return stopped || (next != null && next.isEmpty());
    }

    /** Ends the wait for the next line; no more lines follow. May be called from any thread. */
    public void stop() {
        stopped = true;
        lines.clear();
        lines.offer(END);
    }

    private void read() {
        try {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                lines.put(Optional.of(line));
            }
            lines.put(END);
        } catch (IOException e) {
            stop();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
